from decimal import Decimal as D

import pytest

from invoicing.domain.price_change import change_percent


@pytest.mark.parametrize(
    ("before", "now", "percent"),
    # 13.50 after 12.42 is 8.6957 % more; 10 after 12 is 16.67 % less
    [
        ("12.42", "13.50", "8.7"),
        ("12", "10", "-16.7"),
        ("12", "12", "0"),
        ("12", "0", "-100"),
        ("0", "12", None),
    ],
)
def test_changes_by_hand(before, now, percent):
    assert change_percent(D(before), D(now)) == (D(percent) if percent else None)
