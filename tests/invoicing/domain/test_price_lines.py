from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.domain.agreed_prices import Agreed, AgreementKind
from invoicing.domain.charges import Charge
from invoicing.domain.price_book import Tax
from invoicing.domain.price_lines import listed_lines, price_off
from invoicing.domain.price_steps import StepRule
from invoicing.domain.pricing import NoPrice, PriceItem
from tests.invoicing.domain.small_book import book, charge, visit

JANUARY = date(2026, 1, 1)


def agreed(kind, amount, item=None):
    return (Agreed(AgreementKind(kind), D(amount), "Large herd", JANUARY, item),)


def test_a_line_has_price_tax_day_visit_and_work():
    (line,) = listed_lines(charge(quantity=3), book())
    assert (line.quantity, line.unit_price, line.unit, line.tax_percent) == (3, D("13.50"), "C62", 20)
    assert (line.visit_id, line.done_on, line.keys) == (7, date(2026, 3, 3), ("k0", "k1", "k2"))
    assert line.description == "Functional trim"
    assert (line.allowance, line.allowance_percent) == (0, None)


def test_percent_off_is_an_allowance_with_its_percent_and_reason():
    """7 x 13.50 = 94.50; 7.5 % of it is 7.0875, so 7.09 off."""
    (line,) = listed_lines(charge(quantity=7), book(agreed=agreed("percent", "7.5")))
    assert (line.unit_price, line.allowance, line.allowance_percent) == (D("13.50"), D("7.09"), D("7.5"))
    assert line.allowance_reason == "Large herd"


def test_an_agreed_price_takes_the_place_of_the_list_and_its_steps():
    steps = {"functional": {1: "14", 3: "12"}}
    own = agreed("price", "11", PriceItem.FUNCTIONAL)
    (line,) = listed_lines(charge(quantity=4), book(steps, agreed=own))
    assert (line.quantity, line.unit_price, line.allowance) == (4, D(11), 0)
    assert line.why == "noted; agreed: Large herd; list price 12.00"


def test_an_agreed_price_needs_no_price_in_the_list():
    (line,) = listed_lines(charge(PriceItem.SHOE), book(agreed=agreed("price", "20", PriceItem.SHOE)))
    assert (line.unit_price, line.tax_percent) == (D(20), 20)


def test_an_agreed_price_of_nought_leaves_the_work_off():
    assert listed_lines(charge(), book(agreed=agreed("price", "0", PriceItem.FUNCTIONAL))) == []


def test_slices_are_lines_and_share_out_the_work():
    lines = listed_lines(
        charge(quantity=5), book({"functional": {1: "14", 3: "12"}}, step_rule=StepRule.SLICES)
    )
    assert [(line.quantity, line.unit_price, line.keys) for line in lines] == [
        (2, D(14), ("k0", "k1")),
        (3, D(12), ("k2", "k3", "k4")),
    ]
    assert [line.why for line in lines] == ["1 to 2; noted", "3 to 5; noted"]


def test_a_first_slice_at_nought_is_left_off_and_the_rest_bills_the_work():
    steps = {"functional": {1: "0", 3: "12"}}
    (line,) = listed_lines(charge(quantity=5), book(steps, step_rule=StepRule.SLICES))
    assert (line.quantity, len(line.keys)) == (3, 5)


def test_every_slice_of_a_distance_names_a_work_of_its_own():
    steps = {"kilometre": {1: "0.50", 31: "0.40"}}
    way = Charge(visit(), PriceItem.KILOMETRE, "there and back", ("visit/7/travel",), D("40.4"))
    lines = listed_lines(way, book(steps, step_rule=StepRule.SLICES))
    assert [(line.quantity, line.keys) for line in lines] == [
        (30, ("visit/7/travel",)),
        (D("10.4"), ("visit/7/travel/2",)),
    ]


def test_guarantee_is_a_line_at_nought_unless_it_costs_nothing_anyway():
    (line,) = listed_lines(charge(is_free=True), book())
    assert (line.unit_price, line.description) == (0, "Functional trim, under guarantee")
    assert listed_lines(charge(is_free=True), book({"functional": "0"})) == []
    assert listed_lines(charge(PriceItem.SHOE, is_free=True), book()) == []


def test_no_price_is_named():
    with pytest.raises(NoPrice, match="Shoe"):
        listed_lines(charge(PriceItem.SHOE), book())


def test_the_reason_of_no_tax_goes_with_the_line():
    exempt = Tax("E", D(0), "Exempt: small business", "VATEX-X")
    free = book()
    free = type(free)(free.prices, dict.fromkeys(free.prices, exempt))
    (line,) = listed_lines(charge(), free)
    assert (line.tax_category, line.tax_reason, line.tax_reason_code) == (
        "E",
        "Exempt: small business",
        "VATEX-X",
    )


@pytest.mark.parametrize(("kind", "amount", "expected"), [("price", "50", "50"), ("percent", "10", "72.00")])
def test_an_amount_as_agreed(kind, amount, expected):
    own = book(agreed=agreed(kind, amount, PriceItem.MINIMUM))
    assert price_off(PriceItem.MINIMUM, D(80), own) == (D(expected), " (Large herd)")
    assert price_off(PriceItem.MINIMUM, D(80), book()) == (D(80), "")
