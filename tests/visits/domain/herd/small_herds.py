"""Herds of a few cows, written down in a line for each look."""

from datetime import date, timedelta

from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import CowLife, CowSeen, FootSeen, HerdFacts, LesionSeen
from visits.domain.lesions import LesionCode
from visits.domain.visit_states import VisitReason

DAY_ONE = date(2024, 1, 8)
LONG_AGO = date(2022, 1, 1)
TODAY = DAY_ONE + timedelta(days=900)


def day(number):
    return DAY_ONE + timedelta(days=number)


def look(number, *codes, cow=1, foot=Foot.LEFT_HIND, treated=None, reason=VisitReason.ROUTINE):
    """A cow whose one foot was lifted on that day, with these lesions; treated when there is one."""
    lesions = tuple(LesionSeen(LesionCode(code), Claw.LATERAL) for code in codes)
    lifted = FootSeen(foot, lesions, bool(codes) if treated is None else treated)
    return CowSeen(cow, day(number), number, reason, (lifted,))


def herd(*looks, lives=None, **more):
    """A herd of the cows looked at, there since long ago unless told otherwise."""
    lives = {life.cow: life for life in lives or ()}
    cows = [
        lives.get(cow, CowLife(cow, str(cow), LONG_AGO))
        for cow in sorted({*lives, *(seen.cow for seen in looks)})
    ]
    ordered = tuple(sorted(looks, key=lambda seen: seen.day))
    return HerdFacts(TODAY, tuple(cows), ordered, **more)
