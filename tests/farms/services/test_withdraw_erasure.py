"""A wish taken back; what was done stays done."""

from datetime import timedelta

import pytest

from farms.selectors.erasures import open_erasure
from farms.services.ask_erasure import ask_erasure
from farms.services.withdraw_erasure import ErasureIsDone, withdraw_erasure
from tests.factories import NOON


def test_a_wish_taken_back_is_open_no_more_and_taking_it_back_again_changes_nothing(house):
    wish = ask_erasure(farm=house.farm, note="", at=NOON, by=house.client)
    withdraw_erasure(erasure=wish, at=NOON)
    assert withdraw_erasure(erasure=wish, at=NOON + timedelta(days=1)).withdrawn_at == NOON
    assert open_erasure(house.scope, house.farm) is None


def test_what_was_carried_out_cannot_be_taken_back(house):
    wish = ask_erasure(farm=house.farm, note="", at=NOON, by=house.client)
    wish.done_at = NOON
    wish.save()
    with pytest.raises(ErasureIsDone):
        withdraw_erasure(erasure=wish, at=NOON)
