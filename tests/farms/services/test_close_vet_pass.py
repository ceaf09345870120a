"""A closed link stays closed."""

from datetime import timedelta

from farms.services.close_vet_pass import close_vet_pass
from tests.factories import NOON
from tests.farms.services.test_give_vet_pass import give


def test_a_closed_pass_opens_no_more_and_closing_it_again_changes_nothing(house):
    row = give(house).row
    close_vet_pass(vet_pass=row, at=NOON + timedelta(days=1))
    again = close_vet_pass(vet_pass=row, at=NOON + timedelta(days=2))
    assert again.closed_at == NOON + timedelta(days=1)
    assert not again.is_open(NOON + timedelta(days=3))
