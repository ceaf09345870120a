"""When a vet's link was last opened."""

from datetime import timedelta

from farms.services.close_vet_pass import close_vet_pass
from farms.services.note_vet_opened import note_vet_opened
from tests.factories import NOON
from tests.farms.services.test_give_vet_pass import give


def opened_at(row):
    return row.locked().opened_at


def test_going_from_page_to_page_is_one_opening_and_coming_back_later_is_another(house):
    row = give(house).row
    assert note_vet_opened(vet_pass=row, at=NOON)
    assert not note_vet_opened(vet_pass=row, at=NOON + timedelta(minutes=9))
    assert opened_at(row) == NOON
    assert note_vet_opened(vet_pass=row, at=NOON + timedelta(minutes=11))
    assert opened_at(row) == NOON + timedelta(minutes=11)


def test_a_closed_link_was_not_opened(house):
    row = give(house).row
    close_vet_pass(vet_pass=row, at=NOON)
    assert not note_vet_opened(vet_pass=row, at=NOON)
    assert opened_at(row) is None
