from datetime import date
from decimal import Decimal

import pytest

from invoicing.models import TaxRate
from invoicing.selectors.price_book import rates_held
from invoicing.services.lock_period import PeriodLocked, lock_period
from invoicing.services.set_tax_rate import (
    RateBilledOn,
    RateHoldsThen,
    RateMakesNoSense,
    RateWord,
    locked_unbilled,
    set_tax_rate,
)
from tests.factories import NOON, make_prices
from tests.invoicing.drafts import draft, issue
from tests.invoicing.services.price_sheets import JANUARY, JUNE, MARCH, rate


def percents(house, day):
    return {code: row.percent for code, row in rates_held(house.scope, day).items()}


def test_a_rate_holds_from_its_day_on_and_the_one_before_until_then(house):
    rate(house.business, percent="20")
    rate(house.business, percent="21", since=JUNE)
    rate(house.business, "none", "0", category="O", reason="Not registered", reason_code="VATEX-EU-O")
    assert percents(house, date(2026, 5, 31)) == {"usual": 20, "none": 0}
    assert percents(house, JUNE) == {"usual": 21, "none": 0}


def test_a_rate_that_was_not_billed_on_is_mended(house):
    row = rate(house.business)
    word = RateWord("usual", "Standard", "S", Decimal(19), MARCH)
    assert set_tax_rate(business=house.business, word=word, instead_of=row).pk == row.pk
    assert percents(house, MARCH) == {"usual": 19}


def test_a_rate_that_was_billed_on_stays(house):
    make_prices(house.business)
    issue(draft(house), house)
    rows = TaxRate.objects.within(house.scope)
    word = RateWord("usual", "", "S", Decimal(19), JANUARY)
    with pytest.raises(RateBilledOn):
        set_tax_rate(business=house.business, word=word, instead_of=rows.get(code="usual"))
    assert locked_unbilled(rows.get(code="low"))
    rate(house.business, percent="21", since=JUNE)


def test_two_rates_of_one_code_never_begin_on_one_day(house):
    rate(house.business)
    with pytest.raises(RateHoldsThen):
        rate(house.business, percent="21")


def test_no_tax_without_a_reason_is_refused_at_its_field(house):
    with pytest.raises(RateMakesNoSense, match="Say why") as refused:
        rate(house.business, percent="0", category="E")
    assert refused.value.field == "reason"


def test_what_lies_in_a_closed_period_is_refused(house):
    row = rate(house.business)
    lock_period(scope=house.scope, until=date(2026, 2, 28), why="Year end", at=NOON, by=house.owner)
    with pytest.raises(PeriodLocked):
        rate(house.business, "low", "5")
    with pytest.raises(PeriodLocked):
        locked_unbilled(row)
