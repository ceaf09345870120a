"""A small real mail server on the loopback (RFC 5321, as much as is needed) that takes, refuses, stalls or hangs up."""

import socketserver
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from email import message_from_bytes
from email.message import EmailMessage
from email.policy import default
from typing import TypeVar


@dataclass(frozen=True)
class Taken:
    """One mail as it came over the line."""

    sender: str
    recipients: tuple[str, ...]
    content: bytes

    @property
    def mail(self) -> EmailMessage:
        return message_from_bytes(self.content, policy=default)


@dataclass
class MailServer:
    """What it does is told in turn, one word for each mail that comes; the last one holds on.

    "take"; "451 words" after the text; "rcpt 550 words", "mail 553 words" to that command; "connect 554 words" as the
    greeting; "hang up": the line is cut after the text came, without an answer; "hang up early": after RCPT;
    "take and hang up": it has the mail, and its answer is lost; "silent": no answer to the text.
    """

    port: int
    does: list[str] = field(default_factory=lambda: ["take"])
    taken: list[Taken] = field(default_factory=list)
    came: int = 0
    pause: threading.Event | None = None
    """When set, the answer to the text waits for it."""
    reached_text: threading.Event = field(default_factory=threading.Event)

    def next_act(self) -> str:
        self.came += 1
        return self.does.pop(0) if len(self.does) > 1 else self.does[0]


class _Talk(socketserver.StreamRequestHandler):
    timeout = 20

    def handle(self) -> None:
        server: MailServer = self.server.told  # type: ignore[attr-defined]
        self.act, self.told = server.next_act(), server
        self.sender, self.recipients = "", []
        if self.act.startswith("connect "):
            self.say(self.act.removeprefix("connect "))
            return
        self.say("220 mail.example.invalid ready")
        while (line := self.rfile.readline()) and self.obey(line.decode().strip()):
            pass

    def say(self, words: str) -> None:
        self.wfile.write(f"{words}\r\n".encode())

    def obey(self, line: str) -> bool:
        """Whether the talk goes on."""
        word = line[:4].upper()
        if word == "QUIT":
            self.say("221 bye")
            return False
        if word == "DATA":
            return self.text()
        if word == "MAIL":
            self.sender = line
            self.say(self.answer_to("mail", "250 2.1.0 sender fine"))
        elif word == "RCPT":
            if self.act == "hang up early":
                return False
            self.recipients.append(line.partition(":")[2].split()[0].strip("<>"))
            self.say(self.answer_to("rcpt", "250 2.1.5 recipient fine"))
        else:
            self.say("250 mail.example.invalid")
        return True

    def answer_to(self, command: str, usual: str) -> str:
        return self.act.removeprefix(f"{command} ") if self.act.startswith(f"{command} ") else usual

    def text(self) -> bool:
        self.say("354 go on")
        lines = []
        while (line := self.rfile.readline()) not in (b".\r\n", b""):
            lines.append(line.removeprefix(b".") if line.startswith(b"..") else line)
        self.told.reached_text.set()
        if self.told.pause is not None:
            self.told.pause.wait(20)
        if self.act == "silent":
            self.rfile.readline()
        if self.act in ("hang up", "silent"):
            return False
        if self.act[0].isdigit():
            self.say(self.act)
            return True
        self.told.taken.append(Taken(self.sender, tuple(self.recipients), b"".join(lines)))
        if self.act == "take and hang up":
            return False
        self.say("250 2.0.0 taken as Q1")
        return True


class _Server(socketserver.ThreadingTCPServer):
    allow_reuse_address = True
    daemon_threads = True


Server = TypeVar("Server", bound=MailServer)


@contextmanager
def mail_server(kind: type[Server] = MailServer) -> Iterator[Server]:  # type: ignore[assignment]
    """Run one on a free port until the block ends."""
    with _Server(("127.0.0.1", 0), _Talk) as server:
        told = kind(port=server.server_address[1])
        server.told = told  # type: ignore[attr-defined]
        thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True)
        thread.start()
        try:
            yield told
        finally:
            server.shutdown()
            thread.join()
