"""Which cows have the lesions: by lactation, days in milk and season; and where they sit: foot, claw and zone.

Method: in each group, cows that had the lesion at one look or more / cows looked at, each cow once, Wilson interval at
95 %. By foot and claw only cows count whose foot was lifted. A cow seen at two whole-herd trims can stand in two groups
(she grew older), but once in each. Unit: cows per 100 cows seen, the interval likewise; zones are plain counts of cows.
Lactation and days in milk are those on the day of the look, from the calving before it; 1, 2, 3, 4 and more, and
"not known". Days in milk run to 60, 150, 305 and beyond: sole bruising and ulcers peak at 61 to 150 days (Manske 2002,
trade-facts 4), 305 days is the usual reckoned lactation (common practice); a dry cow counts on from her last calving.
Seasons are the meteorological quarters, named by their months so that they hold on both halves of the globe.

Hand in the looks of whole-herd rounds for the herd's figures; of picked cows they only tell of the cows picked.
Must not be read as a cause, and groups must not be called apart unless an interval of the difference says so.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date

from visits.domain.feet import Claw, Foot, ZoneMap
from visits.domain.herd.facts import CowSeen, HerdFacts
from visits.domain.herd.intervals import Interval, share_of
from visits.domain.herd.lesion_families import What, counts_as, has_any, lesions_on, lesions_on_foot

UNKNOWN = "not known"
PARITIES = ("1", "2", "3", "4 and more", UNKNOWN)
DAYS_IN_MILK = ((60, "0 to 60"), (150, "61 to 150"), (305, "151 to 305"))
LATE = "306 and more"
DAYS_IN_MILK_LABELS = (*(label for _, label in DAYS_IN_MILK), LATE, UNKNOWN)
SEASONS = ("Dec to Feb", "Mar to May", "Jun to Aug", "Sep to Nov")


@dataclass(frozen=True)
class GroupRate:
    """`cows` of `seen` in the group had it; `per_100` and `interval` per 100 cows, None when none was seen."""

    group: str
    cows: int
    seen: int
    per_100: float | None
    interval: Interval | None


@dataclass(frozen=True)
class FootRate:
    """Cows with it on this foot (on this claw of it, when one is named) of the cows whose foot was lifted."""

    foot: Foot
    claw: Claw | None
    cows: int
    seen: int
    per_100: float | None
    interval: Interval | None


@dataclass(frozen=True)
class ZoneCount:
    """How many cows had it in this place; `zone` None: the place was not noted."""

    foot: Foot
    claw: Claw
    zone: int | None
    zone_map: ZoneMap
    cows: int


def by_parity(facts: HerdFacts, looks: Iterable[CowSeen], what: What = None) -> tuple[GroupRate, ...]:
    """By the number of her lactation that day."""
    return _by_group(looks, what, PARITIES, lambda look: parity_group(facts, look))


def by_days_in_milk(facts: HerdFacts, looks: Iterable[CowSeen], what: What = None) -> tuple[GroupRate, ...]:
    """By the days since she calved."""
    return _by_group(looks, what, DAYS_IN_MILK_LABELS, lambda look: days_in_milk_group(facts, look))


def by_season(looks: Iterable[CowSeen], what: What = None) -> tuple[GroupRate, ...]:
    """By the quarter of the year of the look."""
    return _by_group(looks, what, SEASONS, lambda look: season_of(look.day))


def by_foot(looks: Iterable[CowSeen], what: What = None) -> tuple[FootRate, ...]:
    """By foot, of the cows whose foot was lifted."""
    lifted, having = _lifted_and_having(looks, what)
    return tuple(
        _foot_rate(foot, None, set().union(*(having[foot, claw] for claw in Claw)), lifted[foot])
        for foot in Foot
    )


def by_claw(looks: Iterable[CowSeen], what: What = None) -> tuple[FootRate, ...]:
    """By foot and claw (outer, inner, skin), of the cows whose foot was lifted."""
    lifted, having = _lifted_and_having(looks, what)
    return tuple(_foot_rate(foot, claw, having[foot, claw], lifted[foot]) for foot in Foot for claw in Claw)


def by_zone(looks: Iterable[CowSeen], what: What = None) -> tuple[ZoneCount, ...]:
    """Cows by the place of the lesion; only places where one was seen, in order of foot, claw and zone."""
    cows: dict[tuple[Foot, Claw, int | None, ZoneMap], set[int]] = defaultdict(set)
    for look in looks:
        for foot in look.feet:
            for seen in lesions_on_foot(foot):
                if counts_as(seen.lesion, what):
                    cows[foot.foot, seen.claw, seen.zone, seen.zone_map].add(look.cow)
    feet, claws = list(Foot), list(Claw)
    found = [ZoneCount(*place, cows=len(here)) for place, here in cows.items()]
    return tuple(
        sorted(found, key=lambda z: (feet.index(z.foot), claws.index(z.claw), z.zone is None, z.zone or 0))
    )


def parity_group(facts: HerdFacts, look: CowSeen) -> str:
    """Her lactation on the day of the look, as one of PARITIES."""
    life = facts.by_cow.get(look.cow)
    calved = life.calving_before(look.day) if life else None
    if calved is None or not calved.lactation:
        return UNKNOWN
    return PARITIES[min(calved.lactation, 4) - 1]


def days_in_milk_group(facts: HerdFacts, look: CowSeen) -> str:
    """Her days in milk on the day of the look, as one of DAYS_IN_MILK_LABELS."""
    life = facts.by_cow.get(look.cow)
    calved = life.calving_before(look.day) if life else None
    if calved is None:
        return UNKNOWN
    days = (look.day - calved.day).days
    return next((label for last, label in DAYS_IN_MILK if days <= last), LATE)


def season_of(day: date) -> str:
    """The meteorological quarter of the day, by its months."""
    return SEASONS[day.month % 12 // 3]


def _by_group(
    looks: Iterable[CowSeen], what: What, groups: tuple[str, ...], group_of: Callable[[CowSeen], str]
) -> tuple[GroupRate, ...]:
    seen: dict[str, set[int]] = {group: set() for group in groups}
    having: dict[str, set[int]] = {group: set() for group in groups}
    for look in looks:
        group = group_of(look)
        seen[group].add(look.cow)
        if has_any(lesions_on(look), what):
            having[group].add(look.cow)
    shares = {group: share_of(len(having[group]), len(seen[group])) for group in groups}
    return tuple(GroupRate(g, s.count, s.total, s.per_100, s.per_100_interval) for g, s in shares.items())


def _lifted_and_having(
    looks: Iterable[CowSeen], what: What
) -> tuple[dict[Foot, set[int]], dict[tuple[Foot, Claw], set[int]]]:
    """The cows whose foot was lifted, by foot, and those that had it, by foot and claw."""
    lifted: dict[Foot, set[int]] = defaultdict(set)
    having: dict[tuple[Foot, Claw], set[int]] = defaultdict(set)
    for look in looks:
        for foot in look.feet:
            lifted[foot.foot].add(look.cow)
            for seen in lesions_on_foot(foot):
                if counts_as(seen.lesion, what):
                    having[foot.foot, seen.claw].add(look.cow)
    return lifted, having


def _foot_rate(foot: Foot, claw: Claw | None, having: set[int], lifted: set[int]) -> FootRate:
    found = share_of(len(having), len(lifted))
    return FootRate(foot, claw, found.count, found.total, found.per_100, found.per_100_interval)
