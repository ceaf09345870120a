"""Herds made of whole rounds, for the tests of what is told of them."""

from datetime import timedelta

from tests.visits.domain.herd.small_herds import LONG_AGO, TODAY, day, look
from visits.domain.feet import Foot
from visits.domain.herd.facts import Calved, CowLife, CowSeen, FootSeen, HerdFacts
from visits.domain.herd.finding import StoryPeriod
from visits.domain.visit_states import VisitReason

LAST_YEAR = StoryPeriod(TODAY - timedelta(days=364), TODAY + timedelta(days=1), "in the last year")


def lives(count, **more):
    return tuple(CowLife(cow, str(cow), LONG_AGO, **more) for cow in range(count))


def life_calved(cow, number, days_ago_from):
    """A cow that calved on that day for the `number`th time."""
    return CowLife(cow, str(cow), LONG_AGO, calvings=(Calved(day(days_ago_from), number),))


def round_on(number, cows, lame, code="SU", first=0, **more):
    """A routine round: `cows` cows from the `first` on, the first `lame` of them with the lesion, the rest clean."""
    with_it = [look(number, code, cow=first + cow, **more) for cow in range(lame)]
    return [*with_it, *(look(number, cow=first + cow, **more) for cow in range(lame, cows))]


def herd_of(count, *rounds, herd_size=None, cows=None):
    seen = tuple(sorted((look for each in rounds for look in each), key=lambda look: look.day))
    size = count if herd_size is None else herd_size
    return HerdFacts(TODAY, cows or lives(count), seen, herd_size=size)


def seen_with(cow, number, *lesions, foot=Foot.LEFT_HIND):
    """A cow whose foot had these `LesionSeen`."""
    return CowSeen(cow, day(number), number, VisitReason.ROUTINE, (FootSeen(foot, lesions, bool(lesions)),))
