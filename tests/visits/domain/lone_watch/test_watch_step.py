"""What a watch does next: tables of cases, and a run through time that never lets anybody be forgotten."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from visits.domain.lone_watch.watch_states import WatchState
from visits.domain.lone_watch.watch_step import (
    HELD,
    MOST_TELLINGS,
    SETTLE,
    Step,
    StepKind,
    WatchFacts,
    due_at,
    watch_step,
)

END = datetime(2026, 3, 3, 12, tzinfo=UTC)
WAIT, ASK, SETTLES, RESUME, TELL = (StepKind(kind) for kind in ("wait", "ask", "settle", "resume", "tell"))


def at(minutes):
    """So many minutes after the visit should have been over."""
    return END + timedelta(minutes=minutes)


def facts(**changes):
    """Grace 30, answer 10, repeat 15 minutes. Whole numbers among the changes are minutes after the end."""
    figures = {name: timedelta(minutes=n) for name, n in (("grace", 30), ("answer", 10), ("repeat", 15))}
    told = {
        name: at(value) if type(value) is int and name != "tellings" else value
        for name, value in changes.items()
    }
    return WatchFacts(**{"state": WatchState.WATCHING, "expected_end": END, **figures, **told})


ASKED = {"state": WatchState.ASKED, "asked_at": 30, "answer_until": 40}
TOLD = {**ASKED, "state": WatchState.TOLD, "told_at": 40, "tellings": 1}
CASES = {
    "before the end": ({}, -60, WAIT, 30),
    "within the grace": ({}, 29, WAIT, 30),
    "the grace is over": ({}, 30, ASK, 40),
    "a minute late, as the timetable is": ({}, 31, ASK, 41),
    "thirty minutes more were given": ({"well_until": 55}, 40, WAIT, 55),
    "and are over": ({"well_until": 55}, 55, ASK, 65),
    "thirty minutes more long before the end change nothing": ({"well_until": -20}, 10, WAIT, 30),
    "we were away for five minutes: asked as usual": ({}, 35, ASK, 45),
    "we were away beyond the time to answer: asked for a moment only": ({}, 90, ASK, 93),
    "away, but the phone was heard since: it can answer": ({"heard_at": 31}, 90, ASK, 100),
    "away, and the phone was heard before only": ({"heard_at": 29}, 90, ASK, 93),
    "asked, time to answer": (ASKED, 35, WAIT, 40),
    "asked, no answer": (ASKED, 40, TELL, 55),
    "asked, and the phone is merely in touch": ({**ASKED, "heard_at": 39}, 40, TELL, 55),
    "asked, and a cow was noted since": ({**ASKED, "last_sign_at": 33}, 35, RESUME, 35),
    "asked, and the last cow was before": ({**ASKED, "last_sign_at": 29}, 40, TELL, 55),
    "asked, then we were away: phones speak first": (ASKED, 100, SETTLES, 103),
    "and only once": ({**ASKED, "answer_until": 103, "was_away": True}, 110, TELL, 125),
    "told, the next not yet": (TOLD, 50, WAIT, 55),
    "told, the next now": (TOLD, 55, TELL, 70),
    "told, we were away: the next at once": (TOLD, 200, TELL, 215),
    "somebody sees to it": ({**TOLD, "taken_at": 45}, 55, WAIT, 105),
    "but says nothing for an hour": ({**TOLD, "taken_at": 45}, 105, TELL, 120),
    "the one told cannot": ({**TOLD, "told_at": None}, 43, TELL, 58),
    "all were told often enough": ({**TOLD, "tellings": MOST_TELLINGS}, 500, WAIT, None),
    "over": ({"state": WatchState.ENDED}, 500, WAIT, None),
}


@pytest.mark.parametrize(("changes", "now", "kind", "then"), CASES.values(), ids=CASES)
def test_the_step_that_is_due(changes, now, kind, then):
    assert watch_step(facts(**changes), at(now)) == Step(kind, None if then is None else at(then))


@pytest.mark.parametrize(
    ("zone", "end"),
    [
        ("Europe/London", "2026-03-29T00:45"),  # the clock jumps at one
        ("Europe/London", "2026-10-25T00:45"),  # the hour from one comes twice
        ("America/New_York", "2026-11-01T00:45"),
        ("Australia/Lord_Howe", "2026-04-05T01:20"),  # half an hour only
    ],
)
def test_the_wall_clock_may_change_under_it(zone, end):
    """Thirty minutes are thirty minutes, whatever the wall says; and a time with its zone is the same as one in UTC."""
    in_zone = facts(expected_end=datetime.fromisoformat(end).replace(tzinfo=ZoneInfo(zone)))
    in_utc = replace(in_zone, expected_end=in_zone.expected_end.astimezone(UTC))
    due = due_at(in_utc)
    assert due - in_utc.expected_end == timedelta(minutes=30)
    for held in (in_utc, in_zone):
        assert watch_step(held, due - timedelta(minutes=1)) == Step(WAIT, due)
        assert watch_step(held, due) == Step(ASK, due + timedelta(minutes=10))
        asked = replace(held, state=WatchState.ASKED, asked_at=due, answer_until=due + timedelta(minutes=10))
        assert watch_step(asked, due + timedelta(minutes=10)).kind is TELL


def does(held, step, now):
    """What a look leaves behind, as the service writes it."""
    if step.kind is ASK:
        return replace(
            held,
            state=WatchState.ASKED,
            asked_at=now,
            answer_until=step.at,
            was_away=step.at - now < held.answer,
        )
    if step.kind is SETTLES:
        return replace(held, answer_until=step.at, was_away=True)
    if step.kind is TELL:
        return replace(held, state=WatchState.TOLD, told_at=now, taken_at=None, tellings=held.tellings + 1)
    return held


@given(pauses=st.lists(st.integers(1, 90), min_size=3, max_size=40))
@settings(max_examples=examples(60))
def test_whenever_it_is_looked_somebody_is_told_in_bounded_time(pauses):
    """However long we are away between looks: two looks after the answer's end, at the latest, somebody is told."""
    held, now, looks_late = facts(), at(-30), 0
    for pause in pauses:
        now += timedelta(minutes=pause)
        step = watch_step(held, now)
        assert step.at is None or step.at > now
        held = does(held, step, now)
        assert watch_step(held, now).kind is WAIT, "the same look again does nothing"
        if held.state is WatchState.ASKED and now > held.answer_until:
            looks_late += 1
        assert looks_late == 0, "past the answer's end he is either told of or given the one moment"
    if now >= at(30) + timedelta(minutes=10) + 3 * max(timedelta(minutes=p) for p in pauses) + SETTLE:
        assert held.state is WatchState.TOLD


def test_a_helper_holds_the_others_back_for_an_hour():
    assert timedelta(hours=1) == HELD
