"""A business that is made once for a file, for tests that only look at it or change rows of their own."""

from collections.abc import Iterator

import pytest
from django.db import transaction

from tests.factories import House, make_house


@pytest.fixture(scope="module")
def standing_house(django_db_setup, django_db_blocker) -> Iterator[House]:
    """Taken back at the end of the file. Each test runs in a transaction of its own inside; ask for `db` with it."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_house()
        transaction.set_rollback(True)
