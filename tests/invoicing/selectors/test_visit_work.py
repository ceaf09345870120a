"""The work of a visit, piece by piece."""

from datetime import date, timedelta

import pytest

from invoicing.selectors.visit_work import visit_work, visit_works
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    planned,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry
from visits.domain.feet import Claw, Foot
from visits.domain.visit_states import VisitReason
from visits.models import ClawAction, Trim, Visit

DRESSED = ActionEntry(ActionKind.DRESSING)
WRAPPED = ActionEntry(ActionKind.WRAP, Claw.LATERAL)


def visited(house, *cows, days=0, **changes):
    """A finished visit; each cow with her feet."""
    visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=days), **changes)
    for cow, *feet in cows:
        put_down(visit, cow, *feet)
    return finish(visit, house.trimmer)


def tails(work):
    """Keys without their ids."""
    return ["/".join([key.key.split("/")[0], *key.key.split("/")[2:]]) for key in work.pieces]


def test_the_cow_then_what_was_put_on_her_then_the_call_out(house):
    other = make_cow(house.farm, "102")
    feet = trimmed_foot(Foot.LEFT_HIND, DRESSED, DRESSED, WRAPPED), trimmed_foot(Foot.RIGHT_HIND)
    visit = visited(
        house,
        (house.cow, blocked_foot(kind=BlockKind.SHOE)),
        (other, *feet),
        (make_cow(house.farm, "103"),),
        reason=VisitReason.URGENT,
    )
    work = visit_work(visit)
    assert tails(work) == [
        "trim/corrective",
        "trim/LH/shoe/medial",
        "trim/functional",
        "trim/LH/dressing/1",
        "trim/LH/dressing/2",
        "trim/LH/wrap/lateral",
        "trim/check",
        "visit/call_out",
    ]
    assert len({piece.key for piece in work.pieces}) == len(work.pieces)
    assert (work.day, work.is_urgent, work.farm_id) == (date(2026, 3, 3), True, house.farm.pk)
    functional = work.pieces[2]
    assert (functional.cow_words, functional.detail) == ("cow 102", "left hind, right hind")
    assert functional.had_full_trim
    assert not work.pieces[0].had_full_trim


def test_keys_stay_when_a_phone_writes_the_cow_down_again(house):
    visit = visited(house, (house.cow, blocked_foot()))
    before = [piece.key for piece in visit_work(visit).pieces]
    for action in list(ClawAction.objects.within(house.scope).order_by("pk")):
        action.delete()
        action.pk = None
        action.save(force_insert=True)
    assert [piece.key for piece in visit_work(visit).pieces] == before


def test_a_foot_that_we_trimmed_before_is_known_by_its_day(house):
    visited(house, (house.cow, blocked_foot(Foot.LEFT_HIND)))
    visited(house, (house.cow, trimmed_foot(Foot.RIGHT_HIND)), days=2)
    again = visited(house, (house.cow, blocked_foot(Foot.LEFT_HIND), trimmed_foot(Foot.RIGHT_HIND)), days=10)
    cow, block, _ = visit_work(again).pieces
    assert (cow.rechecks_trim_on, block.rechecks_trim_on) == (date(2026, 3, 3), date(2026, 3, 3))
    new_foot = visited(
        house, (house.cow, blocked_foot(Foot.LEFT_HIND), trimmed_foot(Foot.LEFT_FORE)), days=12
    )
    cow, block, _ = visit_work(new_foot).pieces
    assert (cow.rechecks_trim_on, block.rechecks_trim_on) == (None, date(2026, 3, 13))


def test_a_cow_taken_back_is_no_work_and_nothing_done_is_nothing_to_charge(house):
    visit = visited(house, (house.cow, blocked_foot()))
    Trim.objects.within(house.scope).update(taken_back_at=NOON)
    assert visit_work(visit).pieces == ()


def test_an_unfinished_visit_has_none(house):
    with pytest.raises(ValueError, match="finished"):
        visit_work(planned(house.farm, house.van))


def test_many_visits_take_no_more_queries_than_one(house, django_assert_num_queries):
    visits = [visited(house, (make_cow(house.farm, str(700 + n)), blocked_foot()), days=n) for n in range(3)]
    rows = list(Visit.objects.within(house.scope).select_related("business").order_by("pk"))
    with django_assert_num_queries(4):
        works = visit_works(house.scope, rows)
    assert [work.visit_id for work in works] == [visit.pk for visit in visits]
