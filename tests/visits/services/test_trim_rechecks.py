"""A foot that was looked at closes its re-check; what was found may open the next."""

from datetime import timedelta

from tests.factories import NOON, TUESDAY_TEN, blocked_foot, finish, put_down, trimmed_foot, under_way, wanted
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.recheck_figures import RecheckFigures
from visits.models import BusinessFigures, Recheck
from visits.services.stored_cow import StoredCow
from visits.services.trim_rechecks import RechecksOfCows

DAY = TUESDAY_TEN.date()
SORE = FindingEntry(LesionCode.DD, Claw.SKIN, dd_stage=DDStage.M2)
OFF = FootEntry(Foot.LEFT_HIND, actions=(ActionEntry(ActionKind.BLOCK_OFF, Claw.MEDIAL),))


def rechecks(house):
    return Recheck.objects.within(house.scope).order_by("pk")


def next_visit(house, visit, days):
    finish(visit, house.trimmer)
    return under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=days))


def test_a_blocked_foot_is_due_again_by_the_days_of_its_block(house, visit):
    trim = put_down(visit, house.cow, blocked_foot())
    (found,) = rechecks(house)
    assert (found.cow, found.farm, found.foot, found.cause) == (house.cow, house.farm, "LH", "block")
    assert (found.due_from, found.due_until) == (DAY + timedelta(days=21), DAY + timedelta(days=28))
    assert (found.from_trim, found.closed_on) == (trim, None)


def test_a_foot_with_nothing_on_it_is_not_looked_at_again(house, visit):
    put_down(visit, house.cow, trimmed_foot())
    assert not rechecks(house).exists()


def test_the_businesss_own_days_count(house, visit):
    BusinessFigures.objects.create(
        business=house.business, rechecks={"block.wood": [10, 12], "lesion.SU": [10, 12]}
    )
    put_down(visit, house.cow, blocked_foot())
    assert rechecks(house).get().due_from == DAY + timedelta(days=10)


def test_taking_the_block_off_closes_it(house, visit):
    put_down(visit, house.cow, blocked_foot())
    later = put_down(next_visit(house, visit, 24), house.cow, OFF)
    (found,) = rechecks(house)
    assert (found.closed_on, found.closed_by_trim) == (DAY + timedelta(days=24), later)
    assert found.closed_because == "looked at"


def test_a_cow_and_foot_have_at_most_one_open(house, visit):
    put_down(visit, house.cow, blocked_foot())
    put_down(next_visit(house, visit, 24), house.cow, blocked_foot())
    assert [found.closed_on is None for found in rechecks(house)] == [False, True]


def test_a_foot_that_was_not_lifted_stays_open(house, visit):
    put_down(visit, house.cow, blocked_foot(), blocked_foot(Foot.RIGHT_HIND))
    put_down(next_visit(house, visit, 24), house.cow, OFF)
    assert [found.foot for found in rechecks(house).open()] == ["RH"]


def test_a_block_left_on_is_not_forgotten_when_the_foot_is_looked_at_for_another_reason(house, visit):
    put_down(visit, house.cow, blocked_foot())
    put_down(next_visit(house, visit, 7), house.cow, trimmed_foot())
    found = rechecks(house).open().get()
    assert (found.cause, found.due_until) == ("block", DAY + timedelta(days=28))


def test_two_reasons_on_one_foot_make_one_look_and_the_earlier_one(house, visit):
    put_down(visit, house.cow, blocked_foot())
    put_down(next_visit(house, visit, 7), house.cow, trimmed_foot(findings=(SORE,)))
    found = rechecks(house).open().get()
    assert (found.cause, found.due_until) == ("lesion", DAY + timedelta(days=14))
    assert "wooden block" in found.what


def test_mending_the_trim_takes_back_what_it_opened_and_closed(house, visit):
    put_down(visit, house.cow, blocked_foot())
    again = next_visit(house, visit, 24)
    put_down(again, house.cow, OFF)
    put_down(again, house.cow, trimmed_foot(Foot.RIGHT_HIND), at=again.started_at + timedelta(hours=1))
    found = rechecks(house).get()
    assert (found.foot, found.closed_on, found.closed_by_trim, found.closed_because) == ("LH", None, None, "")


def noted_again(house, trim):
    cow = StoredCow(trim, CowEntry(feet=(blocked_foot(),)), DAY, NOON)
    again = RechecksOfCows(house.scope, [cow], RecheckFigures())
    again.note(cow, [])
    again.save()


def test_noting_the_same_entry_twice_leaves_the_same_one_with_the_visit_that_will_see_to_it(house, visit):
    trim = put_down(visit, house.cow, blocked_foot())
    rechecks(house).update(visit=wanted(house.farm))
    before = rechecks(house).values().get()
    noted_again(house, trim)
    assert rechecks(house).values().get() == before


def test_a_foot_that_the_farm_has_looked_at_itself_is_not_opened_again(house, visit):
    trim = put_down(visit, house.cow, blocked_foot())
    rechecks(house).update(closed_on=DAY, closed_because="the farm looked")
    noted_again(house, trim)
    assert rechecks(house).get().closed_because == "the farm looked"
