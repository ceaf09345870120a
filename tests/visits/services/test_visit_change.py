"""A visit changes state through one door: guard, lock, history."""

from datetime import timedelta

import pytest
from django.db import transaction

from tests.factories import NOON, in_state, planned, wanted
from visits.domain.visit_states import VisitState, may_move
from visits.models import Visit, VisitEvent
from visits.services.visit_change import VisitCannotMove, add_event, begin_change, keep_change

EVERY_MOVE = [(now, to) for now in VisitState for to in VisitState]


@pytest.mark.parametrize(("now", "to"), EVERY_MOVE, ids=[f"{now}-{to}" for now, to in EVERY_MOVE])
def test_a_visit_moves_only_where_the_table_of_moves_lets_it(house, now, to):
    visit = in_state(now, house.farm, house.van)
    if may_move(now, to):
        assert begin_change(visit, to).pk == visit.pk
    else:
        with pytest.raises(VisitCannotMove) as refused:
            begin_change(visit, to)
        assert now.label.lower() in refused.value.message
        assert to.label.lower() in refused.value.message


def test_the_door_looks_at_the_visit_as_it_is_stored_not_as_it_was_read(house):
    stale = planned(house.farm, house.van)
    fresh = begin_change(stale, VisitState.CALLED_OFF)
    keep_change(fresh, VisitState.CALLED_OFF, at=NOON, by=house.owner)
    with pytest.raises(VisitCannotMove):
        begin_change(stale, VisitState.CONFIRMED)


def test_a_kept_change_has_its_line_of_history_and_a_higher_calendar_sequence(house):
    visit = planned(house.farm, house.van)
    before, later = visit.calendar_sequence, NOON + timedelta(hours=1)
    keep_change(visit, VisitState.CONFIRMED, at=later, by=house.office, note="said yes by phone")
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.changed_at) == ("confirmed", later)
    assert stored.calendar_sequence == before + 1
    event = VisitEvent.objects.within(house.scope).filter(visit=visit).last()
    assert (event.before, event.after, event.at) == ("planned", "confirmed", later)
    assert (event.by, event.note) == (house.office, "said yes by phone")


def test_the_history_tells_every_step_in_order(house):
    visit = in_state(VisitState.FINISHED, house.farm, house.van)
    events = VisitEvent.objects.within(house.scope).filter(visit=visit)
    steps = [(event.before, event.after) for event in events]
    assert steps == [
        ("", "wanted"),
        ("wanted", "planned"),
        ("planned", "under_way"),
        ("under_way", "finished"),
    ]


def test_a_change_that_is_taken_back_leaves_no_history(house):
    visit = planned(house.farm, house.van)
    count = VisitEvent.objects.within(house.scope).count()
    with pytest.raises(ZeroDivisionError), transaction.atomic():
        keep_change(visit, VisitState.CONFIRMED, at=NOON, by=house.owner)
        raise ZeroDivisionError
    assert VisitEvent.objects.within(house.scope).count() == count
    assert Visit.objects.within(house.scope).get(pk=visit.pk).state == "planned"


def test_a_rule_may_stand_in_the_history_without_a_person_and_a_long_note_is_cut(house):
    event = add_event(wanted(house.farm), before="", at=NOON, by=None, note="x" * 400)
    assert (event.by, len(event.note)) == (None, 300)
