"""What past visits used, as what can be learned from."""

from datetime import timedelta
from decimal import Decimal

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    in_state,
    make_cow,
    make_house,
    make_kit,
    planned,
    put_down,
    stock_up,
    trimmed_foot,
    under_way,
)
from tests.visits.selectors.kit.use_rows import used_by_trim, used_by_visit
from visits.domain.visit_states import VisitReason, VisitState
from visits.selectors.kit.use_past import use_past
from visits.selectors.kit.wash_log import left_unwashed
from visits.services.call_off_visit import call_off_visit
from visits.services.forget_visits import forget_visits

TUESDAY = TUESDAY_TEN.date()


def past_of(house, *items):
    return use_past(house.scope, [item.pk for item in items], house.business.zone)


def worked(house, start=TUESDAY_TEN, **changes):
    """Two cows, a block on the first."""
    visit = under_way(house.farm, house.van, start, **changes)
    trim = put_down(visit, house.cow, blocked_foot())
    put_down(visit, make_cow(house.farm, f"9{visit.pk}"), trimmed_foot())
    return finish(visit, house.trimmer), trim


def test_cows_that_used_some_are_told_apart_from_what_the_visit_used(house):
    kit = make_kit(house.business)
    visit, _ = worked(house, head_count=3, corrective_count=1)
    used_by_visit(kit["glue"], visit, 10, TUESDAY_TEN)
    (use,) = past_of(house, kit["glue"]).by_item[kit["glue"].pk]
    assert (use.farm, use.day, use.reason, use.is_made) == (house.farm.pk, TUESDAY, VisitReason.ROUTINE, True)
    assert (use.routine, use.corrective, use.booked) == (1, 1, (3, 1))
    assert (use.sizes, use.used) == (((Decimal(25), 1),), Decimal(35))
    # Planned at noon of the day before at the earliest: the factories' NOON.
    assert use.notice == (TUESDAY - NOON.date()).days


def test_a_cow_whose_use_was_put_right_is_one_cow(house):
    kit = make_kit(house.business)
    _, trim = worked(house)
    used_by_trim(kit["glue"], trim, 25, TUESDAY_TEN + timedelta(hours=4))
    (use,) = past_of(house, kit["glue"]).by_item[kit["glue"].pk]
    assert (use.sizes, use.used) == (((Decimal(50), 1),), Decimal(50))
    used_by_trim(kit["glue"], trim, -50, TUESDAY_TEN + timedelta(hours=5))
    (use,) = past_of(house, kit["glue"]).by_item[kit["glue"].pk]
    assert (use.sizes, use.used) == ((), 0)


def test_a_bare_visit_of_an_erased_farm_teaches_nothing(house):
    kit = make_kit(house.business)
    visit, _ = worked(house)
    assert past_of(house, kit["glue"]).by_item[kit["glue"].pk]
    forget_visits(farm=house.farm, kept=[visit.pk])
    house.farm.erased_at = NOON
    house.farm.save()
    past = past_of(house, kit["glue"])
    assert not past.visits
    assert not past.by_item[kit["glue"].pk]
    assert not left_unwashed(house.scope, NOON)


def test_a_consumable_is_told_only_since_it_is_in_the_ledger(house):
    kit = make_kit(house.business)
    worked(house)
    worked(house, TUESDAY_TEN + timedelta(days=7))
    stock_up(kit["wrap"], 5, at=TUESDAY_TEN + timedelta(days=3))
    past = past_of(house, *kit.values())
    assert [len(past.by_item[kit[name].pk]) for name in ("wood", "wrap")] == [2, 1]
    assert [use.cows for use in past.visits] == [2, 2]
    assert past.by_item[kit["wrap"].pk][0].used == 0


def test_a_visit_called_off_at_the_last_moment_is_told_and_one_long_before_is_not(house):
    late, early = (planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=n)) for n in (0, 20))
    for visit in (late, early):
        call_off_visit(visit=visit, because="Snow.", at=TUESDAY_TEN - timedelta(hours=1), by=house.trimmer)
    in_state(VisitState.PLANNED, house.farm, house.van, TUESDAY_TEN + timedelta(days=2))
    told = past_of(house).visits
    assert [(use.day, use.is_made, use.cows) for use in told] == [(TUESDAY, False, 0)]


def test_the_number_of_queries_does_not_grow(house, django_assert_num_queries):
    kit = make_kit(house.business)
    worked(house)
    for visits in (1, 2):
        with django_assert_num_queries(5):
            assert len(past_of(house, *kit.values()).visits) == visits
        worked(house, TUESDAY_TEN + timedelta(days=7))


def test_another_business_sees_nothing_of_it(house):
    kit = make_kit(house.business)
    worked(house)
    far = past_of(make_house("Far"), *kit.values())
    assert far.visits == []
    assert not any(far.by_item.values())
