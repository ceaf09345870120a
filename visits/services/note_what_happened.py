"""What happened in the week is put down as it is, whatever becomes of the plan."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from farms.models import Farm
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.domain.visit_states import VisitReason
from visits.domain.what_happened import WhatHappened, late_words, out_words
from visits.models import OutBecause, Van, VanOut, Visit
from visits.selectors.diary_in_force import LIVE
from visits.selectors.week_under_way import LateWord
from visits.services.ask_visit import VisitWish, ask_visit
from visits.services.call_off_visit import call_off_visit


class HappeningMakesNoSense(RuleBroken):
    """What is said to have happened cannot be."""

    code = "happening_makes_no_sense"


@dataclass(frozen=True)
class OutWord:
    """The van does no work from `since` to `until`."""

    van: Van
    because: OutBecause
    since: datetime
    until: datetime


@dataclass(frozen=True)
class OffWord:
    """The farm does not want the visit."""

    visit: Visit
    because: str


@dataclass(frozen=True)
class LameWord:
    """A cow of the farm cannot wait; the wish is urgent."""

    farm: Farm
    wish: VisitWish


Happening = LateWord | OutWord | OffWord | LameWord


@transaction.atomic
def note_what_happened(*, happening: Happening, at: datetime, by: User) -> tuple[WhatHappened, str]:
    """Keep it, and say what it is and in a sentence. HappeningMakesNoSense, or what the step itself refuses."""
    if isinstance(happening, LateWord):
        return WhatHappened.LATE, _late(happening, at)
    if isinstance(happening, OutWord):
        return _out(happening, at, by)
    if isinstance(happening, OffWord):
        visit = call_off_visit(visit=happening.visit, because=happening.because, at=at, by=by)
        return WhatHappened.CALLED_OFF, f"{visit.farm} calls its visit off: {happening.because}"
    return WhatHappened.LAME, _lame(happening, at, by)


def _late(word: LateWord, at: datetime) -> str:
    """Nothing to keep but the sentence: the crush page says when the visit is really done."""
    visit = word.visit
    if visit.van is None or visit.is_closed or visit.planned_start is None:
        raise HappeningMakesNoSense("This visit is done or has no van: choose the one that the van is at.")
    if word.free < at:
        raise HappeningMakesNoSense("That is over already: give the time when the van will be free.")
    return late_words(visit.van.name, visit.farm.name, word.free.astimezone(visit.business.zone))


def _out(word: OutWord, at: datetime, by: User) -> tuple[WhatHappened, str]:
    if word.until <= word.since:
        raise HappeningMakesNoSense("It is back before it is out: give a later end.")
    row = VanOut(business_id=word.van.business_id, van=word.van, since=word.since, until=word.until)
    row.because, row.noted_at, row.noted_by = word.because.value, at, by
    row.full_clean()
    row.save()
    zone = word.van.business.zone
    said = out_words(
        word.van.name, word.because.label, word.since.astimezone(zone), word.until.astimezone(zone)
    )
    return WhatHappened.ILL if word.because is OutBecause.ILL else WhatHappened.OUT, said


def _lame(word: LameWord, at: datetime, by: User) -> str:
    require_same_business(word.farm)
    if word.wish.reason is not VisitReason.URGENT:
        raise HappeningMakesNoSense("A lame cow that cannot wait is an urgent visit.")
    ask_visit(farm=word.farm, wish=word.wish, at=at, by=by)
    return f"{word.farm}: a lame cow cannot wait"


def may_run_late(visit: Visit) -> bool:
    """Whether a van can be late at this visit: it has its hour still before it, or is under way."""
    return visit.visit_state in LIVE or (visit.started_at is not None and not visit.is_closed)
