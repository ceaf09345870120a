from datetime import date, timedelta

from tests.factories import (
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    named,
    planned,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import ActionEntry
from visits.domain.feet import Claw, Foot
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.selectors.before_visit import visit_day
from visits.selectors.crush_list import crush_list
from visits.services.ask_visit import CowWish

LATER = TUESDAY_TEN + timedelta(days=28)


def numbers(visit):
    return [line.number for line in crush_list(visit)]


def with_block(house):
    """The house's cow got a wooden block on the first Tuesday of March."""
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    return finish(visit, house.trimmer)


def test_lame_first_then_what_is_due_then_the_rest(house):
    with_block(house)
    lame, rest = make_cow(house.farm, "305"), make_cow(house.farm, "007")
    wishes = [named(rest, "Long toes"), CowWish(lame, "Walks badly", MobilityScale.UK, 2)]
    visit = planned(house.farm, house.van, LATER, cows=wishes)
    assert numbers(visit) == ["305", "101", "007"]
    first, due, last = crush_list(visit)
    assert (first.is_lame, first.why) == (True, ("lame, UK 0 to 3: 2", "Walks badly"))
    assert due.why[0].startswith("left hind: wooden block on inner claw")
    assert (last.is_lame, last.why) == (False, ("Long toes",))


def test_what_is_not_due_yet_is_not_on_the_list(house):
    with_block(house)
    assert numbers(planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=3))) == []


def test_the_list_is_the_same_after_the_cow_is_done(house):
    with_block(house)
    visit = under_way(house.farm, house.van, LATER)
    before = crush_list(visit)
    put_down(visit, house.cow, trimmed_foot(Foot.LEFT_HIND, _off()))
    assert crush_list(visit) == before
    assert before


def _off():
    return ActionEntry(ActionKind.BLOCK_OFF, Claw.MEDIAL)


def test_on_an_urgent_visit_a_named_cow_is_as_lame_as_the_farm_told(house):
    told = {"reason": VisitReason.URGENT, "mobility_scale": MobilityScale.UK, "mobility_score": 3}
    visit = planned(house.farm, house.van, cows=[named(house.cow)], **told)
    (line,) = crush_list(visit)
    assert line.why == ("lame, UK 0 to 3: 3", "Walks badly")
    routine = planned(
        house.farm,
        house.van,
        LATER,
        cows=[named(house.cow)],
        mobility_scale=MobilityScale.UK,
        mobility_score=3,
    )
    assert [line.is_lame for line in crush_list(routine)] == [False]


def test_a_cow_that_has_left_is_not_expected(house):
    visit = planned(house.farm, house.van, cows=[named(house.cow)])
    house.cow.status = "sold"
    house.cow.save()
    assert numbers(visit) == []


def test_the_day_of_a_visit_is_the_one_it_began_on_else_planned_else_due(house):
    visit = planned(house.farm, house.van)
    assert visit_day(visit) == date(2026, 3, 3)
    visit.planned_start = None
    assert visit_day(visit) == visit.due_from
