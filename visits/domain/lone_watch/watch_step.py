"""What a watch over a lone worker does next: a rule of the facts and the clock alone.

Common practice, no source; that somebody must keep track of a lone worker and act when contact is lost is what the
HSE's INDG73 asks for (from memory).
"""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from enum import StrEnum

from visits.domain.lone_watch.watch_states import WatchState

MORE = timedelta(minutes=30)
"""What "30 minutes more" gives."""
LATE = timedelta(minutes=3)
"""It is looked every minute. Whoever comes this much too late was away: the server, its network or its power."""
SETTLE = timedelta(minutes=3)
"""After that the phones get so long to say what they could not say meanwhile. They try every minute."""
HELD = timedelta(minutes=60)
"""Somebody said that they see to it. Unless it is heard that all is well, the others are told after so long."""
MOST_TELLINGS = 24


class StepKind(StrEnum):
    WAIT = "wait"
    ASK = "ask"
    SETTLE = "settle"
    RESUME = "resume"
    TELL = "tell"


@dataclass(frozen=True)
class WatchFacts:
    """What is known of one watch. Times are aware.

    `well_until`: the trimmer said "30 minutes more" until then. `last_sign_at`: the newest thing that only he can
    have done on his phone (a cow noted, the visit begun). `heard_at`: when his phone last reached us by itself.
    `answer_until`: asked, he has until then. `taken_at`: somebody said that they see to it.
    """

    state: WatchState
    expected_end: datetime
    grace: timedelta
    answer: timedelta
    repeat: timedelta
    well_until: datetime | None = None
    asked_at: datetime | None = None
    answer_until: datetime | None = None
    was_away: bool = False
    told_at: datetime | None = None
    tellings: int = 0
    taken_at: datetime | None = None
    last_sign_at: datetime | None = None
    heard_at: datetime | None = None


@dataclass(frozen=True)
class Step:
    """What to do now; `at` is when to look again (None: never), for ASK and SETTLE how long he has to answer."""

    kind: StepKind
    at: datetime | None


def due_at(facts: WatchFacts) -> datetime:
    """When the trimmer is to be asked."""
    due = facts.expected_end.astimezone(UTC) + facts.grace
    return due if facts.well_until is None else max(due, facts.well_until)


def watch_step(facts: WatchFacts, now: datetime) -> Step:
    """The step at the aware instant `now`; the same facts a moment later, once it is done, give WAIT."""
    if facts.state is WatchState.WATCHING:
        return _while_watching(facts, now)
    if facts.state is WatchState.ASKED:
        return _while_asked(facts, now)
    if facts.state is WatchState.TOLD:
        return _while_told(facts, now)
    return Step(StepKind.WAIT, None)


def _while_watching(facts: WatchFacts, now: datetime) -> Step:
    due = due_at(facts)
    if now < due:
        return Step(StepKind.WAIT, due)
    is_heard = facts.heard_at is not None and facts.heard_at >= due
    if now - due >= max(facts.answer, LATE) and not is_heard:
        # because: nobody could ask while we were away, and a hurt man must not wait for our hour as well as for his
        # own ten minutes. Only the phones, which may hold the finish of the visit, get their moment to speak first.
        return Step(StepKind.ASK, now + min(facts.answer, SETTLE))
    return Step(StepKind.ASK, now + facts.answer)


def _while_asked(facts: WatchFacts, now: datetime) -> Step:
    if _is_after(facts.last_sign_at, facts.asked_at):
        return Step(StepKind.RESUME, now)
    until = facts.answer_until or now
    if now < until:
        return Step(StepKind.WAIT, until)
    if now - until >= LATE and not facts.was_away:
        # because: he may have answered a server that was away; once only, so that it is never put off again
        return Step(StepKind.SETTLE, now + SETTLE)
    return Step(StepKind.TELL, now + facts.repeat)


def _while_told(facts: WatchFacts, now: datetime) -> Step:
    if facts.tellings >= MOST_TELLINGS:
        return Step(StepKind.WAIT, None)
    again = facts.told_at + facts.repeat if facts.told_at else now
    if facts.taken_at is not None:
        again = max(again, facts.taken_at + HELD)
    if now < again:
        return Step(StepKind.WAIT, again)
    return Step(StepKind.TELL, now + facts.repeat)


def _is_after(one: datetime | None, other: datetime | None) -> bool:
    return one is not None and other is not None and one > other
