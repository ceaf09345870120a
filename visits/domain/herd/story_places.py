"""Picture 3: where on the feet lesions are seen.

Method: counts of cows by foot, claw and zone over all looks of the period (`lesions_by.by_zone`), and for the sentence
cows by place with left and right together. The place seen most is called so only when Wilson's 99 % interval of its
share of the two leading places leaves out a half; 99 % because the leader was picked from many. Unit: cows.

When the figure must not be shown: as a rate of the herd. Hind feet are lifted more often than fore feet, so the two
are not to be compared by these counts.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from trimops.paper.figures import counted
from visits.domain.feet import Claw, zone_name
from visits.domain.herd.facts import CowSeen
from visits.domain.herd.finding import Finding, FindingKind, StoryPeriod
from visits.domain.herd.intervals import wilson
from visits.domain.herd.lesion_families import lesions_on_foot
from visits.domain.herd.lesions_by import ZoneCount, by_zone

TITLE = "Where lesions are seen"
LEVEL_OF_LEADER = 0.99
LEAST_COWS = 5

Place = tuple[bool, Claw, int]
"""Hind or fore, the claw, the zone."""


@dataclass(frozen=True)
class PlacesStory:
    """`counts` for the drawing of the soles."""

    counts: tuple[ZoneCount, ...]
    finding: Finding


def places_story(looks: Iterable[CowSeen], period: StoryPeriod) -> PlacesStory:
    """Of the looks within the period."""
    within = tuple(look for look in looks if period.start <= look.day < period.end)
    return PlacesStory(by_zone(within), _finding(within, period))


def _finding(looks: tuple[CowSeen, ...], period: StoryPeriod) -> Finding:
    cows = _cows_by_place(looks)
    seen = len({look.cow for look in looks})
    basis = (
        f"{counted(seen, 'cow')} at the crush {period.words}, all visits; a cow counts once at each place."
    )
    order = sorted(cows, key=lambda place: (-len(cows[place]), place[1], place[2], not place[0]))
    if not order or len(cows[order[0]]) < LEAST_COWS:
        found = len(cows[order[0]]) if order else 0
        sentence = f"Too few to tell where: at most {counted(found, 'cow')} at one place {period.words}."
        return Finding(TITLE, sentence, FindingKind.TOO_FEW, basis)
    first = len(cows[order[0]])
    second = len(cows[order[1]]) if len(order) > 1 else 0
    if not second or wilson(first, first + second, LEVEL_OF_LEADER).low > 0.5:
        sentence = f"Most often {place_words(order[0])}: {first} of {counted(seen, 'cow')} seen."
        return Finding(TITLE, sentence, FindingKind.PLAIN, basis, f"most often {place_words(order[0])}")
    leading = [f"{place_words(place)} ({counted(len(cows[place]), 'cow')})" for place in order[:2]]
    sentence = f"No single place leads for sure: {' and '.join(leading)} of {seen} seen."
    return Finding(TITLE, sentence, FindingKind.STEADY, basis)


def _cows_by_place(looks: tuple[CowSeen, ...]) -> dict[Place, set[int]]:
    cows: dict[Place, set[int]] = defaultdict(set)
    for look in looks:
        for foot in look.feet:
            for seen in lesions_on_foot(foot):
                if seen.zone is not None:
                    cows[foot.foot.is_hind, seen.claw, seen.zone].add(look.cow)
    return cows


def place_words(place: Place) -> str:
    """ "hind outer claw, where sole meets heel" """
    is_hind, claw, zone = place
    side = "hind" if is_hind else "fore"
    return f"{side} {'feet' if claw is Claw.SKIN else claw.label}, {zone_name(zone)}"
