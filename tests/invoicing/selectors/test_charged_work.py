from datetime import date, timedelta
from decimal import Decimal as D

import pytest

from invoicing.domain.agreed_prices import AgreementKind
from invoicing.domain.pricing import NoPrice, PriceItem
from invoicing.domain.visit_work import VisitWork, WorkPiece, visit_key
from invoicing.models import Agreement, FarmTerms, Price, PriceList, TaxRate, TravelBand
from invoicing.selectors.charged_work import charge_lines
from invoicing.selectors.visit_work import visit_works
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_farm,
    make_house,
    make_prices,
    planned,
    put_down,
    under_way,
)
from trimops.kernel.clock import local_day
from visits.domain.visit_states import VisitReason
from visits.services.call_off_visit import call_off_visit

pytestmark = pytest.mark.django_db


def work_of(visit, *items):
    pieces = [WorkPiece(f"trim/{n}/{item.value}", item, cow_words="101") for n, item in enumerate(items)]
    pieces.append(WorkPiece(visit_key(visit.uid, PriceItem.CALL_OUT), PriceItem.CALL_OUT))
    began = visit.started_at
    day = local_day(began, visit.business.zone)
    return VisitWork(visit.pk, visit.uid, visit.farm_id, day, began, began, False, tuple(pieces))


def lines_for(visit, *items):
    return charge_lines(visit.scope, visit.farm, [work_of(visit, *items)])


def prices(house, **rules):
    """A price list in which all costs 10 but the call-out, which is free; `rules` of the list."""
    held = make_prices(house.business, call_out="0", kilometre="0.45")
    for name, value in rules.items():
        setattr(held, name, value)
    held.save()
    return held


def worked(house, farm=None, start=TUESDAY_TEN):
    return under_way(farm or house.farm, house.van, start)


def test_the_prices_of_the_day_of_the_work_hold(house):
    prices(house)
    later = PriceList.objects.create(business=house.business, name="Later", valid_from=date(2026, 3, 10))
    Price.objects.create(
        business=house.business, price_list=later, item="functional", unit_price=12, tax_code="low"
    )
    first, second = worked(house), worked(house, start=TUESDAY_TEN + timedelta(days=7))
    both = charge_lines(
        house.scope, house.farm, [work_of(visit, PriceItem.FUNCTIONAL) for visit in (first, second)]
    )
    assert [(line.visit_id, line.unit_price, line.tax_percent) for line in both] == [
        (first.pk, 10, 20),
        (second.pk, 12, 5),
    ]


def test_no_list_and_no_rate_are_named(house):
    visit = worked(house)
    with pytest.raises(NoPrice, match="No price list holds on 3 March 2026"):
        lines_for(visit, PriceItem.FUNCTIONAL)
    prices(house)
    TaxRate.objects.within(house.scope).filter(code="low").delete()
    with pytest.raises(NoPrice, match="No tax rate “low”"):
        lines_for(visit, PriceItem.FUNCTIONAL)


def test_a_farm_with_a_tax_of_its_own_has_it_on_every_line(house):
    prices(house)
    TaxRate.objects.create(
        business=house.business,
        code="reverse",
        category="AE",
        percent=0,
        reason="Reverse charge",
        reason_code="VATEX-EU-AE",
        valid_from=date(2026, 1, 1),
    )
    FarmTerms.objects.create(business=house.business, farm=house.farm, tax_code="reverse")
    lines = lines_for(worked(house), PriceItem.FUNCTIONAL, PriceItem.DRESSING)
    assert {(line.tax_category, line.tax_reason_code) for line in lines} == {("AE", "VATEX-EU-AE")}
    assert len(lines) == 2


def test_agreements_hold_for_their_farm_and_between_their_days(house):
    prices(house)
    other = make_farm(house.business, "High Croft", by=house.owner)
    told = {
        "business": house.business,
        "kind": AgreementKind.PERCENT,
        "why": "Herd",
        "valid_from": date(2026, 1, 1),
    }
    Agreement.objects.create(farm=house.farm, amount=10, valid_until=date(2026, 3, 3), **told)
    Agreement.objects.create(farm=other, amount=50, **told)
    today = lines_for(worked(house), PriceItem.FUNCTIONAL)
    later = lines_for(worked(house, start=TUESDAY_TEN + timedelta(days=1)), PriceItem.FUNCTIONAL)
    assert ([line.allowance for line in today], [line.allowance for line in later]) == ([1], [0])


def test_by_distance_from_the_base_and_back(house):
    """The factories' base and farm lie 12.91 km apart as the crow flies; 12.91 x 1.35 twice is 34.86."""
    prices(house, travel_rule="distance")
    line = lines_for(worked(house), PriceItem.FUNCTIONAL)[-1]
    assert (line.item, line.unit, line.unit_price) == (PriceItem.KILOMETRE, "KMT", D("0.45"))
    assert line.quantity == D("34.9")
    assert line.why == "from the base and back, estimated"


def test_by_band(house):
    held = prices(house, travel_rule="band")
    for up_to, price in ((10, 5), (20, 9), (None, 30)):
        TravelBand.objects.create(business=house.business, price_list=held, up_to=up_to, price=price)
    assert lines_for(worked(house), PriceItem.FUNCTIONAL)[-1].unit_price == 9


def test_the_day_s_round_is_shared_among_its_farms_to_the_penny(house):
    prices(house, travel_rule="shared")
    farms = [house.farm] + [
        make_farm(house.business, f"Far {n}", by=house.owner, latitude=D("54.1") + D(n) / 20) for n in (1, 2)
    ]
    visits = [
        under_way(farm, house.van, TUESDAY_TEN + timedelta(hours=3 * n)) for n, farm in enumerate(farms)
    ]
    off = planned(farms[0], house.van, TUESDAY_TEN + timedelta(hours=9))
    call_off_visit(visit=off, because="Snow", at=NOON, by=house.owner)
    shares = [lines_for(visit, PriceItem.FUNCTIONAL)[-1] for visit in visits]
    round_of_three = [line.why.split("shared by")[0] for line in shares]
    assert len(set(round_of_three)) == 1
    cost = D(round_of_three[0].split("cost ")[1].rstrip(", "))
    assert sum(line.unit_price for line in shares) == cost
    assert shares[0].unit_price < shares[1].unit_price < shares[2].unit_price
    alone = D(
        lines_for(worked(house, start=TUESDAY_TEN + timedelta(days=1)), PriceItem.FUNCTIONAL)[-1].unit_price
    )
    assert shares[0].unit_price < alone


def test_a_visit_of_one_recheck_within_the_guarantee_is_free_as_read_from_the_crush(house):
    prices(house, guarantee_days=21)
    first = under_way(house.farm, house.van, TUESDAY_TEN)
    put_down(first, house.cow, blocked_foot())
    first = finish(first, house.trimmer)
    again = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=14), reason=VisitReason.RECHECK)
    put_down(again, house.cow, blocked_foot())
    works = visit_works(house.scope, [first, finish(again, house.trimmer)])
    assert {line.item.value for line in charge_lines(house.scope, house.farm, works[:1])} == {
        "corrective",
        "block",
    }
    assert charge_lines(house.scope, house.farm, works[1:]) == []
    PriceList.objects.within(house.scope).update(guarantee_days=13)
    assert len(charge_lines(house.scope, house.farm, works[1:])) == 2


def test_a_shared_round_costs_no_more_than_a_dozen_queries(house, django_assert_max_num_queries):
    prices(house, travel_rule="shared")
    work = [work_of(worked(house), PriceItem.FUNCTIONAL)]
    with django_assert_max_num_queries(12):
        charge_lines(house.scope, house.farm, work)


def test_the_work_of_another_business_is_not_at_hand(house):
    prices(house)
    far = make_house("Elsewhere")
    visit = worked(far)
    with pytest.raises(KeyError):
        charge_lines(house.scope, house.farm, [work_of(visit, PriceItem.FUNCTIONAL)])
