"""A web address as somebody typed it, read once and by one reader: two would not always agree where it leads."""

import ssl
from dataclasses import dataclass
from functools import cache

import httpx

from trimops.outside.no_answer import NoAnswer, Why

PORTS = {"https": 443, "http": 80}


@dataclass(frozen=True)
class WebAddress:
    """`host` is in ASCII, small letters, without brackets and without a dot at its end; `text` the whole of it,
    without what stands after #."""

    text: str
    scheme: str
    host: str
    port: int
    authority: bytes
    path: bytes

    @property
    def place(self) -> str:
        """Host and port, as `TRIMOPS_INNER_ADDRESSES` writes them."""
        return f"[{self.host}]:{self.port}" if ":" in self.host else f"{self.host}:{self.port}"


def read_address(written: str) -> WebAddress:
    """NoAnswer (REFUSED) where it is no web address, or has a name or password in it."""
    try:
        url = httpx.URL(written)
        host = url.raw_host.decode("ascii").removesuffix(".").lower()
        port = PORTS.get(url.scheme, 0) if url.port is None else url.port
    except (httpx.InvalidURL, UnicodeError, ValueError, TypeError):
        raise NoAnswer(Why.REFUSED, "this is no web address") from None
    if url.scheme not in PORTS or not host or not _is_sound(host):
        raise NoAnswer(Why.REFUSED, "this is no web address")
    if url.userinfo:
        raise NoAnswer(Why.REFUSED, "an address with a name or password in it is not asked")
    plain = url.copy_with(host=host, fragment=None)
    return WebAddress(str(plain), url.scheme, host, port, plain.netloc, plain.raw_path)


def led_on(address: WebAddress, location: str) -> str:
    """Where a redirect leads from there; NoAnswer (ELSEWHERE) where that is no address."""
    try:
        return str(httpx.URL(address.text).join(location))
    except (httpx.InvalidURL, ValueError):
        raise NoAnswer(Why.ELSEWHERE, "it points to something that is no address") from None


@cache
def trusted() -> ssl.SSLContext:
    """Whom we believe: the usual authorities, or those that SSL_CERT_FILE names."""
    return httpx.create_ssl_context()


def _is_sound(host: str) -> bool:
    return ":" in host or all(
        part and part.replace("-", "").replace("_", "").isalnum() for part in host.split(".")
    )
