"""What visits used and what it cost."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    make_house,
    make_kit,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.visits.services.kit.stock_words import amount, bought, word
from visits.domain.kit.stock_ledger import reckon_stock
from visits.models import StockMovement, Trim
from visits.selectors.kit.ledger_lines import lots_of, movements_of
from visits.selectors.kit.visit_materials import VisitMaterials, visit_materials
from visits.services.kit.count_stock import count_stock
from visits.services.kit.stock_place import place_of_van


@pytest.fixture
def kit(house):
    return make_kit(house.business)


@pytest.fixture
def visits(house, kit):
    """Two blocked cows a week apart; the glue of the first costs 10 p a ml, what is bought then 20 p."""
    van = place_of_van(house.van)
    bought(van, kit["wood"], 10, "23.00")
    bought(van, kit["glue"], 30, "3.00")
    bought(van, kit["glue"], 30, "6.00", at=NOON + timedelta(minutes=1))
    made = []
    for days in (0, 7):
        visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=days))
        put_down(visit, house.cow, blocked_foot(), at=TUESDAY_TEN + timedelta(days=days, minutes=5))
        made.append(visit)
    return made


def told(materials):
    return [(line.consumable.name, line.quantity, line.cost) for line in materials.lines]


def test_first_in_first_out_by_visit(house, visits):
    first, second = (visit_materials(house.scope, visits)[visit.pk] for visit in visits)
    assert told(first) == [
        ("Wooden block", 1, Decimal("2.30")),
        ("Glue", 25, Decimal("2.50")),
    ]
    assert told(second) == [("Wooden block", 1, Decimal("2.30")), ("Glue", 25, Decimal("4.50"))]
    assert (second.cost, second.is_known) == (Decimal("6.80"), True)


def test_each_visit_alone_says_the_same(house, visits):
    together = visit_materials(house.scope, visits)
    for visit in visits:
        assert visit_materials(house.scope, [visit]) == {visit.pk: together[visit.pk]}


def test_the_whole_ledger_reckoned_says_the_same(house, kit, visits):
    """Two ways: sums of what left before, or all lines in turn. (The random machine holds them equal too.)"""
    van = place_of_van(house.van)
    count_stock(
        place=van, counted=[amount(kit["glue"], 20)], word=word(house, at=TUESDAY_TEN + timedelta(days=1))
    )
    put_down(visits[0], house.cow, trimmed_foot(), at=TUESDAY_TEN + timedelta(minutes=50))
    found = visit_materials(house.scope, visits)
    lines = movements_of(StockMovement.objects.within(house.scope))
    lots = lots_of(house.scope, list(lines))
    for visit in visits:
        trims = Trim.objects.within(house.scope).filter(visit=visit)
        sources = {f"trim {trim.pk}" for trim in trims}
        whole = {
            item: sum(
                (
                    cost.cost
                    for name, cost in reckon_stock(lines[item], lots[item]).uses.items()
                    if name in sources
                )
            )
            for item in lines
        }
        costs = {line.consumable.pk: line.cost for line in found[visit.pk].lines}
        assert costs == {item: cost for item, cost in whole.items() if item in costs}
        assert sum(costs.values()) == sum(whole.values())


def test_what_a_mended_cow_gave_back_costs_nothing(house, visits):
    put_down(visits[0], house.cow, trimmed_foot(), at=TUESDAY_TEN + timedelta(minutes=50))
    found = visit_materials(house.scope, visits)
    assert found[visits[0].pk] == VisitMaterials()
    assert found[visits[1].pk].cost == Decimal("4.80")


def test_used_before_it_was_bought_or_without_a_price_is_not_known(house, kit):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot(), at=TUESDAY_TEN)
    bought(place_of_van(house.van), kit["glue"], 20, "2.00", at=TUESDAY_TEN + timedelta(days=1))
    found = visit_materials(house.scope, [visit])[visit.pk]
    assert (found.cost, found.is_known) == (Decimal("2.00"), False)
    assert [line.is_known for line in found.lines] == [False, False]


def test_as_many_queries_for_two_visits_as_for_one_and_none_for_nothing(
    house, visits, django_assert_num_queries
):
    for asked in (visits[:1], visits):
        with django_assert_num_queries(6):
            visit_materials(house.scope, asked)
    empty = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=21))
    with django_assert_num_queries(2):
        assert visit_materials(house.scope, [empty]) == {empty.pk: VisitMaterials()}
    other = make_house("Another business").scope
    assert visit_materials(other, visits) == {visit.pk: VisitMaterials() for visit in visits}
