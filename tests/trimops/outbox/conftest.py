"""One small business, and a mail server for its messages."""

import pytest

from tests.factories import make_house
from tests.trimops.outbox.mail_line import mail_line

__all__ = ["mail_line"]


@pytest.fixture
def house(db):
    return make_house()
