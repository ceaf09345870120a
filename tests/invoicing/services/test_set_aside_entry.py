import pytest

from invoicing.services.match_entry import EntryIsDone
from invoicing.services.set_aside_entry import bring_back_entry, set_aside_entry
from invoicing.services.want_reason import ReasonMissing
from tests.factories import NOON
from tests.invoicing.services.test_match_entry import booking, match


def test_with_a_reason_and_back(house):
    entry = booking(house)
    with pytest.raises(ReasonMissing):
        set_aside_entry(entry=entry, because=" ", at=NOON)
    row = set_aside_entry(entry=entry, because="Rent", at=NOON)
    assert (row.set_aside_at, row.set_aside_because) == (NOON, "Rent")
    assert bring_back_entry(entry=row).set_aside_at is None


def test_not_what_is_matched(house):
    entry = booking(house)
    match(house, entry)
    with pytest.raises(EntryIsDone):
        set_aside_entry(entry=entry, because="Rent", at=NOON)
