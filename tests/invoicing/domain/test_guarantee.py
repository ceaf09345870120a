from datetime import date, timedelta

import pytest

from invoicing.domain.guarantee import is_under_guarantee
from invoicing.domain.pricing import PriceItem
from tests.invoicing.domain.small_book import piece

DAY = date(2026, 3, 3)


@pytest.mark.parametrize(
    ("days_ago", "guarantee", "free"),
    [(14, 21, True), (21, 21, True), (22, 21, False), (0, 21, True), (-1, 21, False), (14, 0, False)],
)
def test_a_foot_trimmed_within_those_days_is_free(days_ago, guarantee, free):
    again = piece(PriceItem.CHECK, rechecks_trim_on=DAY - timedelta(days=days_ago))
    assert is_under_guarantee(again, DAY, guarantee) is free


def test_new_feet_full_trims_and_the_call_out_are_not():
    before = DAY - timedelta(days=7)
    assert not is_under_guarantee(piece(PriceItem.CHECK), DAY, 21)
    full = piece(PriceItem.FUNCTIONAL, rechecks_trim_on=before, had_full_trim=True)
    assert not is_under_guarantee(full, DAY, 21)
    assert not is_under_guarantee(piece(PriceItem.CALL_OUT), DAY, 21)
