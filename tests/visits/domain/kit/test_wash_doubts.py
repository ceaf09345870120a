from decimal import Decimal

import pytest

from visits.domain.kit.wash_doubts import WashWord, wash_doubts

LABEL = WashWord("1:100", Decimal(10))


@pytest.mark.parametrize(
    ("noted", "said"),
    [
        (WashWord("1:100", Decimal(10)), ()),
        (WashWord("1 %", Decimal(10)), ()),
        (WashWord("1:100", Decimal("2.5")), ("2.5 min on, the label says 10",)),
        (WashWord("1:200", Decimal(20)), ("mixed 1:200, the label says 1:100",)),
        (WashWord("1:50", Decimal(20)), ()),
        (WashWord("a good slosh", None), ()),
        (WashWord("1:200", Decimal(1)), ("1 min on, the label says 10", "mixed 1:200, the label says 1:100")),
    ],
)
def test_what_falls_short_of_the_label_is_told(noted, said):
    assert wash_doubts(noted, LABEL) == said


def test_a_label_that_says_nothing_raises_no_doubt():
    assert wash_doubts(WashWord("1:900", Decimal(1)), WashWord("", None)) == ()
