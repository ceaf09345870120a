"""Where our own machine may be sent by an address that somebody typed."""

import socket
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from trimops.outside.inner_addresses import inner_because
from trimops.outside.no_answer import NoAnswer, Why
from trimops.outside.web_address import PORTS, WebAddress, read_address

Resolver = Callable[[str, int], Sequence[str]]


def ask_system(host: str, port: int) -> list[str]:
    """The addresses of a name, as this machine finds them; NoAnswer where it has none."""
    try:
        found = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)
    except (OSError, UnicodeError):
        raise NoAnswer(Why.AWAY, "there is no machine of that name") from None
    return list(dict.fromkeys(str(entry[4][0]) for entry in found))


@dataclass(frozen=True)
class Guard:
    """HTTPS on its own port to machines outside, and nothing else.

    `inner` are places (`host:port`) that may be asked wherever they are, also by plain HTTP and on any port, because
    whoever runs this machine said so. `resolve` turns a name into addresses. `names` are the only machines outside
    that may be asked, with all below them (`example` and `a.example`); empty: all may.
    """

    inner: frozenset[str] = frozenset()
    resolve: Resolver = ask_system
    names: frozenset[str] = frozenset()

    @staticmethod
    def of_named(address: str) -> "Guard":
        """For an address that whoever runs this machine has named: its place may be asked, and nothing else inside."""
        return Guard(inner=frozenset({read_address(address).place}))

    def target(self, written: str) -> WebAddress:
        """NoAnswer (REFUSED) where it is no address that may be asked; the machine's own place is not looked at yet."""
        target = read_address(written)
        if target.place in self.inner:
            return target
        if not self._is_listed(target.host):
            raise NoAnswer(Why.REFUSED, "the address is not on the list of those that may be asked from here")
        if target.scheme != "https":
            raise NoAnswer(Why.REFUSED, "the address must begin with https://")
        if target.port not in PORTS.values():
            raise NoAnswer(Why.REFUSED, "an address with a port of its own is not asked")
        if _looks_like_a_number(target.host) and inner_because(target.host):
            raise NoAnswer(Why.REFUSED, "the address is not one of the open internet")
        return target

    def _is_listed(self, host: str) -> bool:
        return not self.names or any(host == name or host.endswith(f".{name}") for name in self.names)

    def addresses(self, target: WebAddress) -> Sequence[str]:
        """What to connect to. Each of them is outside, or none may be asked: of two, anybody's luck would decide."""
        if target.place in self.inner:
            return self.resolve(target.host, target.port)
        found = self.resolve(target.host, target.port)
        if any(inner_because(address) for address in found):
            raise NoAnswer(Why.REFUSED, "the address is not one of the open internet")
        return found


def _looks_like_a_number(host: str) -> bool:
    """2130706433, 0x7f.1, 127.1 and the like are read as addresses by some and as names by others."""
    last = host.rpartition(".")[2]
    return ":" in host or last.isdigit() or last.startswith("0x")
