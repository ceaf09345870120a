"""A real mail server that the program is set to use."""

from collections.abc import Iterator

import pytest

from tests.services.smtp_server import MailServer, mail_server


@pytest.fixture
def mail_line(settings) -> Iterator[MailServer]:
    with mail_server() as server:
        settings.EMAIL_BACKEND = "django.core.mail.backends.smtp.EmailBackend"
        settings.EMAIL_HOST, settings.EMAIL_PORT, settings.EMAIL_USE_TLS = "127.0.0.1", server.port, False
        yield server
