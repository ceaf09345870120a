from dataclasses import replace
from datetime import UTC, date, datetime, time
from decimal import Decimal as D

import pytest

from invoicing.domain.agreed_prices import Agreed, AgreementKind
from invoicing.domain.charge_visit import charge_visit
from invoicing.domain.out_of_hours import UsualHours
from invoicing.domain.pricing import NoPrice, PriceItem
from invoicing.domain.travel_charge import Travelled, TravelRule, TravelTerms
from tests.invoicing.domain.small_book import TEN, TUESDAY, UID, book, cows, piece, visit

WAY = Travelled(D(9), D("18.4"), "by the road map")


def priced(work, held, started=TEN, way=None):
    return [
        (line.item.value, line.quantity, line.unit_price) for line in charge_visit(work, held, started, way)
    ]


def test_a_worked_visit():
    """24 functional trims at 13.50, 2 blocks at 14; call-out 35, urgent 30, on a Saturday 20, 18.4 km at 0.45."""
    extra = {"block": "14", "urgent": "30", "out_of_hours": "20", "kilometre": "0.45"}
    held = book(extra, travel=TravelTerms(TravelRule.DISTANCE))
    work = visit(*cows(2, PriceItem.BLOCK), *cows(24), is_urgent=True)
    lines = charge_visit(work, held, datetime(2026, 3, 7, 10, tzinfo=UTC), WAY)
    assert [(line.item.value, line.quantity, line.unit_price) for line in lines] == [
        ("functional", 24, D("13.50")),
        ("block", 2, D(14)),
        ("call_out", 1, D(35)),
        ("urgent", 1, D(30)),
        ("out_of_hours", 1, D(20)),
        ("kilometre", D("18.4"), D("0.45")),
    ]
    assert lines[4].why == "begun on a Saturday"
    assert [line.keys for line in lines[3:]] == [
        (f"visit/{UID}/urgent",),
        (f"visit/{UID}/out_of_hours",),
        (f"visit/{UID}/travel",),
    ]


def test_supplements_without_a_price_are_not_charged_but_work_without_one_stops_it():
    work = visit(*cows(1), is_urgent=True)
    assert priced(work, book(), datetime(2026, 3, 7, 10, tzinfo=UTC)) == [
        ("functional", 1, D("13.50")),
        ("call_out", 1, D(35)),
    ]
    with pytest.raises(NoPrice, match="Shoe"):
        priced(visit(*cows(1, PriceItem.SHOE)), book())


def test_a_list_without_a_call_out_charges_none_but_travel_and_the_minimum_all_the_same():
    held = book({"kilometre": "0.50"}, minimum=D(30), travel=TravelTerms(TravelRule.DISTANCE))
    no_call_out = {item: steps for item, steps in held.prices.items() if item is not PriceItem.CALL_OUT}
    assert priced(visit(*cows(1)), replace(held, prices=no_call_out), way=WAY) == [
        ("functional", 1, D("13.50")),
        ("kilometre", D("18.4"), D("0.50")),
        ("minimum", 1, D("7.30")),
    ]


def test_within_the_usual_hours_there_is_no_supplement():
    held = book({"out_of_hours": "20"}, hours=UsualHours(time(7), time(18)))
    assert len(priced(visit(*cows(1)), held)) == 2
    assert len(priced(visit(*cows(1)), held, datetime(2026, 3, 3, 6, tzinfo=UTC))) == 3


def test_the_minimum_is_filled_up_after_discounts():
    """2 x 13.50 + 35 = 62; 10 % off each line (2.70 and 3.50) leaves 55.80; up to 80 are missing 24.20."""
    off = Agreed(AgreementKind.PERCENT, D(10), "Neighbour", date(2026, 1, 1))
    lines = charge_visit(visit(*cows(2)), book(minimum=D(80), agreed=(off,)), TEN, None)
    assert (lines[-1].item, lines[-1].unit_price, lines[-1].allowance) == (PriceItem.MINIMUM, D("24.20"), 0)
    assert lines[-1].why == "the visit comes to 55.80, the minimum is 80.00"
    assert sum(line.quantity * line.unit_price - line.allowance for line in lines) == 80


def test_a_farm_may_have_a_minimum_of_its_own():
    own = Agreed(AgreementKind.PRICE, D(60), "Next door", date(2026, 1, 1), PriceItem.MINIMUM)
    assert len(priced(visit(*cows(2)), book(minimum=D(80), agreed=(own,)))) == 2
    lines = charge_visit(visit(*cows(1)), book(minimum=D(80), agreed=(own,)), TEN, None)
    assert (lines[-1].unit_price, lines[-1].why) == (
        D("11.50"),
        "the visit comes to 48.50, the minimum is 60.00 (Next door)",
    )


def test_late_work_without_a_call_out_is_charged_by_itself():
    held = book(
        {"urgent": "30", "kilometre": "0.45"}, minimum=D(500), travel=TravelTerms(TravelRule.DISTANCE)
    )
    work = visit(*cows(1), call_out=False, is_urgent=True)
    assert priced(work, held, way=WAY) == [("functional", 1, D("13.50"))]


AGAIN = piece(PriceItem.FUNCTIONAL, "115", rechecks_trim_on=date(2026, 2, 24))


def test_a_recheck_under_guarantee_is_shown_at_nought_beside_other_work():
    assert priced(visit(*cows(2), AGAIN), book(guarantee_days=10)) == [
        ("functional", 2, D("13.50")),
        ("functional", 1, D(0)),
        ("call_out", 1, D(35)),
    ]


def test_a_visit_of_nothing_but_guarantee_is_free_altogether():
    held = book({"urgent": "30"}, guarantee_days=10, minimum=D(80))
    assert priced(visit(AGAIN, is_urgent=True), held) == []
    assert len(priced(visit(AGAIN), book(guarantee_days=6))) == 2


def test_a_visit_on_which_nothing_was_done_or_nothing_costs_anything_has_no_lines():
    assert priced(visit(call_out=False), book()) == []
    assert priced(visit(*cows(3)), book({"functional": "0", "call_out": "0"}, minimum=D(80))) == []


def test_each_line_knows_its_day():
    assert {line.done_on for line in charge_visit(visit(*cows(1)), book(), TEN, None)} == {TUESDAY}
