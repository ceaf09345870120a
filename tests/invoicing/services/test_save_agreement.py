from datetime import date
from decimal import Decimal

import pytest

from invoicing.domain.agreed_prices import Agreed, AgreementKind
from invoicing.domain.pricing import PriceItem
from invoicing.selectors.price_book import agreed_on
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.save_agreement import AgreementMakesNoSense, AgreementWord, save_agreement
from tests.factories import NOON

MARCH = date(2026, 3, 1)


def agree(house, **changes):
    told = {"kind": AgreementKind.PERCENT, "amount": Decimal(5), "item": None, "why": " Large herd "}
    return save_agreement(farm=house.farm, word=AgreementWord(**{**told, "valid_from": MARCH, **changes}))


def test_what_was_agreed_holds_between_its_days(house):
    agree(house, valid_until=date(2026, 3, 31))
    agree(house, kind=AgreementKind.PRICE, amount=Decimal(11), item=PriceItem.FUNCTIONAL, why="Since long")
    march = agreed_on(house.scope, house.farm, date(2026, 3, 31))
    assert march[0] == Agreed(AgreementKind.PERCENT, Decimal(5), "Large herd", MARCH, None)
    assert [one.why for one in agreed_on(house.scope, house.farm, date(2026, 4, 1))] == ["Since long"]
    assert agreed_on(house.scope, house.farm, date(2026, 2, 28)) == ()


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"amount": Decimal(101)}, "amount"),
        ({"amount": Decimal(0)}, "amount"),
        ({"kind": AgreementKind.PRICE}, "item"),
        ({"valid_until": date(2026, 2, 1)}, "valid_until"),
    ],
)
def test_what_could_not_be_charged_by_is_refused_at_its_field(house, changes, field):
    with pytest.raises(AgreementMakesNoSense) as refused:
        agree(house, **changes)
    assert refused.value.field == field


def test_nothing_is_agreed_for_a_closed_period(house):
    lock_period(scope=house.scope, until=MARCH, why="Quarter", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        agree(house)
