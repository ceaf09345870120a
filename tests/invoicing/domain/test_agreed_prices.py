from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.domain.agreed_prices import Agreed, AgreementKind, agreed_for
from invoicing.domain.pricing import PriceItem

JANUARY, MARCH = date(2026, 1, 1), date(2026, 3, 1)


def agreed(why, since=JANUARY, item=None):
    return Agreed(AgreementKind.PERCENT, D(5), why, since, item)


@pytest.mark.parametrize(
    ("agreements", "holds"),
    [
        ([], None),
        ([agreed("all")], "all"),
        ([agreed("block", item=PriceItem.BLOCK), agreed("all", MARCH)], "block"),
        ([agreed("wrap", item=PriceItem.WRAP)], None),
        ([agreed("new", MARCH), agreed("old")], "new"),
        ([agreed("first"), agreed("second")], "second"),
    ],
)
def test_the_most_special_and_latest_holds(agreements, holds):
    found = agreed_for(PriceItem.BLOCK, agreements)
    assert (found.why if found else None) == holds


def test_the_minimum_is_changed_only_by_its_own_agreement():
    own = agreed("own", item=PriceItem.MINIMUM)
    assert agreed_for(PriceItem.MINIMUM, [agreed("all")]) is None
    assert agreed_for(PriceItem.MINIMUM, [agreed("all"), own]) == own


def test_every_member_has_words_of_its_own():
    assert len({member.label for member in AgreementKind}) == len(AgreementKind)
