import pytest

from farms.domain.cow_status import CowStatus


@pytest.mark.parametrize(
    ("status", "on_farm"),
    [
        (CowStatus.MILKING, True),
        (CowStatus.DRY, True),
        (CowStatus.HEIFER, True),
        (CowStatus.BULL, True),
        (CowStatus.SOLD, False),
        (CowStatus.DEAD, False),
    ],
)
def test_sold_and_dead_cows_no_longer_come_to_the_crush(status, on_farm):
    assert status.is_on_farm is on_farm


def test_every_status_has_a_word_of_its_own():
    assert len({status.label for status in CowStatus}) == len(CowStatus)
