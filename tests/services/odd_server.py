"""A small server on the loopback that answers as it is told, to see what whoever asks makes of it."""

import gzip
import json
import ssl
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

FLOOD = gzip.compress(b"[" * 50_000_000)


@dataclass
class Asked:
    """The server's address and the questions that it has heard, each with its headers (small letters) and body."""

    address: str
    paths: list[str] = field(default_factory=list)
    headers: list[dict[str, str]] = field(default_factory=list)
    bodies: list[bytes] = field(default_factory=list)

    @property
    def place(self) -> str:
        """As `TRIMOPS_INNER_ADDRESSES` names it."""
        return self.address.partition("://")[2]


Answer = Callable[[BaseHTTPRequestHandler], None]


@contextmanager
def odd_server(answer: Answer, tls: str = "") -> Iterator[Asked]:
    """`tls`: the file of a key and a certificate, to be spoken to by HTTPS."""
    asked = Asked("")

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self):
            asked.paths.append(self.path)
            asked.headers.append({name.lower(): text for name, text in self.headers.items()})
            asked.bodies.append(self.rfile.read(int(self.headers.get("Content-Length", 0))))
            try:
                answer(self)
            except OSError:
                return  # whoever asked has hung up

        do_POST = do_GET

        def log_message(self, *words):
            return

    class Server(ThreadingHTTPServer):
        daemon_threads = True
        block_on_close = False

    server = Server(("127.0.0.1", 0), Handler)
    if tls:
        context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
        context.load_cert_chain(tls)
        server.socket = context.wrap_socket(server.socket, server_side=True)
    asked.address = f"{'https' if tls else 'http'}://127.0.0.1:{server.server_port}"
    threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True).start()
    try:
        yield asked
    finally:
        server.shutdown()
        server.server_close()


def says(document: object, status: int = 200) -> Answer:
    """A document as JSON, or bytes as they are."""
    body = document if isinstance(document, bytes) else json.dumps(document).encode()

    def answer(handler: BaseHTTPRequestHandler) -> None:
        handler.send_response(status)
        handler.send_header("Content-Length", str(len(body)))
        handler.end_headers()
        handler.wfile.write(body)

    return answer


def unpacks_to_a_flood(handler: BaseHTTPRequestHandler) -> None:
    """A hundred kilobytes that would unpack to fifty million bytes."""
    handler.send_response(200)
    handler.send_header("Content-Encoding", "gzip")
    handler.send_header("Content-Length", str(len(FLOOD)))
    handler.end_headers()
    handler.wfile.write(FLOOD)


def points_to(address: str) -> Answer:
    def answer(handler: BaseHTTPRequestHandler) -> None:
        handler.send_response(302)
        handler.send_header("Location", address)
        handler.end_headers()

    return answer


def hangs(handler: BaseHTTPRequestHandler) -> None:
    time.sleep(30)


def hangs_up(handler: BaseHTTPRequestHandler) -> None:
    handler.connection.close()


def drips_headers(handler: BaseHTTPRequestHandler) -> None:
    """One byte of a header every tenth of a second: no single wait is long."""
    handler.wfile.write(b"HTTP/1.1 200 OK\r\nX-Long: ")
    for _ in range(300):
        handler.wfile.write(b"a")
        handler.wfile.flush()
        time.sleep(0.1)


def drips_body(handler: BaseHTTPRequestHandler) -> None:
    handler.wfile.write(b"HTTP/1.1 200 OK\r\nContent-Length: 100000\r\n\r\n")
    for _ in range(300):
        handler.wfile.write(b" ")
        handler.wfile.flush()
        time.sleep(0.1)


def never_ends(handler: BaseHTTPRequestHandler) -> None:
    handler.wfile.write(b"HTTP/1.1 200 OK\r\n\r\n")
    for _ in range(2000):
        handler.wfile.write(b"[" * 65_536)
