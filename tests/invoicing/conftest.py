"""A business that is made once for a file, and each test's own copy of it."""

from collections.abc import Iterator
from copy import deepcopy

import pytest
from django.db import transaction

from tests.factories import House, make_house
from tests.trimops.outbox.mail_line import mail_line

__all__ = ["mail_line"]


@pytest.fixture(scope="module")
def standing_house(django_db_setup, django_db_blocker) -> Iterator[House]:
    """Taken back at the end of the file. Each test runs in a transaction of its own inside; ask for `db` with it."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_house()
        transaction.set_rollback(True)


@pytest.fixture
def house(standing_house, db) -> House:
    """As nobody has touched it yet. A file that runs hands side by side makes its own: they see committed rows only."""
    return deepcopy(standing_house)
