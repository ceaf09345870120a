"""One mail is handed to the mail server, and what this said to it is told for sure, or that nobody knows."""

import smtplib
from contextlib import suppress

from django.conf import settings
from django.core.mail import EmailMessage, get_connection
from django.core.mail.backends.smtp import EmailBackend

from trimops.outbox.domain.outgoing_states import ONLY_IN_THE_FOLDER
from trimops.outbox.senders.ready import Away, NotTaken, Refused, Unsure

TIMEOUT_SECONDS = 20
SMTP_BACKEND = "django.core.mail.backends.smtp.EmailBackend"


class _AttentiveServer(smtplib.SMTP):
    """Remembers the last command it was told and the last answer."""

    last_command = ""
    last_reply: tuple[int, bytes] = (0, b"")

    def putcmd(self, cmd: str, args: str = "") -> None:
        self.last_command = cmd
        super().putcmd(cmd, args)

    def getreply(self) -> tuple[int, bytes]:
        self.last_reply = super().getreply()
        return self.last_reply


class _AttentiveBackend(EmailBackend):
    @property
    def connection_class(self) -> type[smtplib.SMTP]:
        return _AttentiveServer


def hand_to_mail_server(mail: EmailMessage) -> str:
    """Hand over a mail to one address; what the server said when it took it. Refused, Away, Unsure.

    Without a mail server it is written to the mail folder of this machine, and the words say so.
    """
    if settings.EMAIL_BACKEND != SMTP_BACKEND:
        return _write_down(mail)
    backend, server = _open()
    try:
        backend.send_messages([mail])
        return _words(*server.last_reply)
    except Exception as fault:
        raise _refusal(fault, server) from fault
    finally:
        # because: the mail was taken or refused by now, and how the talk ends changes nothing about it
        with suppress(Exception):
            backend.close()


def _refusal(fault: Exception, server: _AttentiveServer) -> NotTaken:
    """What a fault of the talk means for the mail."""
    if isinstance(fault, smtplib.SMTPRecipientsRefused):
        code, words = next(iter(fault.recipients.values()))
        return Refused(_words(code, words), for_good=code >= 500)
    if isinstance(fault, smtplib.SMTPDataError):
        said = _words(fault.smtp_code, fault.smtp_error)
        return Refused(said, for_good=fault.smtp_code >= 500)
    if isinstance(fault, smtplib.SMTPResponseException):
        # because: it is our own name or address that is refused, which a person may mend meanwhile
        return Refused(_words(fault.smtp_code, fault.smtp_error))
    # because: once the server was told that the text comes, only its answer tells whether it has the mail
    if server.last_command == "data":
        return Unsure(f"The line broke while the mail was handed over: {_said(fault)}")
    return Refused(_said(fault))


def _open() -> tuple[EmailBackend, _AttentiveServer]:
    backend = _AttentiveBackend(timeout=TIMEOUT_SECONDS)
    try:
        backend.open()
    except smtplib.SMTPResponseException as fault:
        raise Refused(_words(fault.smtp_code, fault.smtp_error)) from fault
    except Exception as fault:
        raise Away(f"No mail server at {settings.EMAIL_HOST}: {_said(fault)}") from fault
    if not isinstance(backend.connection, _AttentiveServer):
        raise Away(f"No mail server at {settings.EMAIL_HOST}.")
    return backend, backend.connection


def _write_down(mail: EmailMessage) -> str:
    try:
        get_connection().send_messages([mail])
    except Exception as fault:
        raise Refused(f"It could not be written to the mail folder: {_said(fault)}") from fault
    return ONLY_IN_THE_FOLDER


def _words(code: int, words: bytes | str) -> str:
    text = words.decode(errors="replace") if isinstance(words, bytes) else words
    return f"{code} {_plain(text)}".strip()


def _said(fault: Exception) -> str:
    return _plain(f"{fault}") or type(fault).__name__


def _plain(text: str) -> str:
    """On one line and without signs that are no letters: what a server says is kept and shown."""
    return "".join(sign for sign in " ".join(text.split()) if sign.isprintable())
