"""The line to the other side: to the very address that was checked, and never for longer than was said."""

import ssl
import time
from collections.abc import Iterable
from dataclasses import dataclass

import httpcore

from trimops.outside.guard import Guard
from trimops.outside.no_answer import NoAnswer, Why
from trimops.outside.web_address import WebAddress

PIECE = 65_536
MOST_ADDRESSES = 4


@dataclass(frozen=True)
class Until:
    """A moment of the monotonic clock, seconds."""

    moment: float

    def left(self) -> float:
        """Seconds until then; NoAnswer when it is past."""
        left = self.moment - time.monotonic()
        if left <= 0:
            raise NoAnswer(Why.SLOW, "it took too long to answer")
        return left


class CheckedLine(httpcore.NetworkBackend):
    """Connects for one question. The name is looked up here, once: what was checked is what is connected to."""

    def __init__(self, guard: Guard, target: WebAddress, until: Until, connect_seconds: float) -> None:
        self.guard, self.target, self.until, self.connect_seconds = guard, target, until, connect_seconds

    def connect_tcp(
        self,
        host: str,
        port: int,
        timeout: float | None = None,
        local_address: str | None = None,
        socket_options: Iterable[httpcore.SOCKET_OPTION] | None = None,
    ) -> httpcore.NetworkStream:
        addresses = self.guard.addresses(self.target)[:MOST_ADDRESSES]
        for number, address in enumerate(addresses, start=1):
            share = min(self.connect_seconds, self.until.left() / (len(addresses) - number + 1))
            try:
                line = httpcore.SyncBackend().connect_tcp(address, self.target.port, share)
            except (httpcore.ConnectError, httpcore.ConnectTimeout):
                continue
            return _TimedLine(line, self.until)
        raise NoAnswer(Why.AWAY, "nobody answers at the address")

    def connect_unix_socket(
        self,
        path: str,
        timeout: float | None = None,
        socket_options: Iterable[httpcore.SOCKET_OPTION] | None = None,
    ) -> httpcore.NetworkStream:
        raise NoAnswer(Why.REFUSED, "this is no web address")


class _TimedLine(httpcore.NetworkStream):
    """Each wait ends when all of it must be over: a limit for each alone begins anew with every byte that drips."""

    def __init__(self, line: httpcore.NetworkStream, until: Until) -> None:
        self.line, self.until = line, until

    def read(self, max_bytes: int, timeout: float | None = None) -> bytes:
        return self.line.read(max_bytes, self.until.left())

    def write(self, buffer: bytes, timeout: float | None = None) -> None:
        for begin in range(0, len(buffer), PIECE):
            self.line.write(buffer[begin : begin + PIECE], self.until.left())

    def start_tls(
        self, ssl_context: ssl.SSLContext, server_hostname: str | None = None, timeout: float | None = None
    ) -> httpcore.NetworkStream:
        return _TimedLine(self.line.start_tls(ssl_context, server_hostname, self.until.left()), self.until)

    def close(self) -> None:
        self.line.close()

    def get_extra_info(self, info: str) -> object:
        return self.line.get_extra_info(info)
