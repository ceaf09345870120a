"""What is told of a herd, as the contents of its six pictures."""

from datetime import date

from trimops.paper.figures import counted
from visits.documents.herd_story_content import (
    AgainstOthers,
    ChangeSeen,
    Contest,
    CowGroup,
    FreeStep,
    HerdContent,
    Kinds,
    KindYear,
    OverTime,
    Party,
    Reading,
    SetAgainst,
    SoleHeat,
    Split,
    TimePoint,
    TimeToNext,
    WhichCows,
    ZoneCount,
)
from visits.domain.herd.change_flag import Direction
from visits.domain.herd.cow_year_rates import CowYearRate
from visits.domain.herd.herd_story import HerdTold
from visits.domain.herd.intervals import Interval
from visits.domain.herd.lesions_by import UNKNOWN, GroupRate
from visits.domain.herd.published_rates import PublishedRate
from visits.domain.herd.story_groups import GroupsStory
from visits.domain.herd.story_kinds import KindsStory
from visits.domain.herd.story_others import ComparedRate, OthersStory
from visits.domain.herd.story_places import PlacesStory
from visits.domain.herd.story_time import TimeStory
from visits.domain.herd.story_trend import TrendStory

COUNTRIES = {"AT": "Austria", "CA": "Canada", "GB": "Britain", "NO": "Norway", "SE": "Sweden"}
FOLLOWED_ON = (0, 90, 180, 270, 365)


def herd_contents(told: HerdTold, business: str) -> tuple[HerdContent, ...]:
    """In the order of `told.findings`."""
    return (
        over_time(told.trend),
        kinds(told.kinds),
        sole_heat(told.places),
        which_cows(told.groups),
        time_to_next(told.time),
        against_others(told.others, business),
    )


def over_time(story: TrendStory) -> OverTime:
    points = tuple(
        TimePoint(point.day, reading, point.rate.is_herd_rate, point.rate.seen)
        for point in story.points
        if (reading := _reading(point.rate.per_100, point.rate.interval))
    )
    first = points[0].day if points else date.max
    changes = tuple(
        ChangeSeen(flag.since, flag.direction is Direction.RISEN)
        for flag in story.chart.flags
        if flag.since >= first
    )
    return OverTime("cows with any lesion, per 100 seen", points, changes)


def kinds(story: KindsStory) -> Kinds:
    years = tuple(KindYear(year.label, _rate(year.infectious), _rate(year.claw_horn)) for year in story.years)
    return Kinds("new cases per 100 cow-years", years)


def sole_heat(story: PlacesStory) -> SoleHeat:
    counts = tuple(ZoneCount(place.foot, place.claw, place.zone, place.cows) for place in story.counts)
    return SoleHeat(counts, "cows")


def which_cows(story: GroupsStory) -> WhichCows:
    splits = tuple(
        Split(parting.label, tuple(_group(group) for group in parting.groups if _is_shown(group)))
        for parting in story.partings
    )
    everyone = _reading(story.everyone.per_100, story.everyone.per_100_interval)
    return WhichCows("cows with any lesion, per 100 seen", splits, everyone)


def _is_shown(group: GroupRate) -> bool:
    return group.seen > 0 or group.group != UNKNOWN


def _group(group: GroupRate) -> CowGroup:
    return CowGroup(group.group, _reading(group.per_100, group.interval), group.cows, group.seen)


def time_to_next(story: TimeStory) -> TimeToNext:
    """As far as enough feet are followed, and the half-way day only when the sentence tells something."""
    curve, last = story.curve, story.drawn_until
    steps = tuple(
        FreeStep(int(step.day), Reading(100 * step.survival, 100 * step.low, 100 * step.high))
        for step in curve.steps
        if step.day <= last
    )
    if not last:
        return TimeToNext((), (), 0)
    followed = tuple((day, curve.at_risk(day)) for day in FOLLOWED_ON if day <= last)
    return TimeToNext((FreeStep(0, Reading(100, 100, 100)), *steps), followed, last, story.half_by)


def against_others(story: OthersStory, business: str) -> AgainstOthers:
    contests = tuple(_contest(each, story.others, business) for each in story.compared)
    return AgainstOthers("cows with it, per 100 seen", contests)


def _contest(each: ComparedRate, others: int, business: str) -> Contest:
    rate = each.rate
    lines = [SetAgainst("this herd", Party.OWN, _reading(rate.per_100, rate.interval))]
    if each.business:
        usual = each.business.usual.times(100)
        label = f"{counted(others, 'other herd')} of {business}"
        lines.append(SetAgainst(label, Party.OTHERS, _reading(each.together.per_100, usual)))
    for against in each.published:
        printed = against.published
        reading = Reading(printed.per_100, printed.low, printed.high)
        lines.append(SetAgainst(printed_label(printed), Party.PUBLISHED, reading))
    return Contest(f"{rate.what[0].upper()}{rate.what[1:]}", tuple(lines))


def printed_label(printed: PublishedRate) -> str:
    """ "Solano et al. 2016, Canada", "Cramer et al. 2008, Canada, free stall" """
    name = printed.source.cited.split(",")[0].split(" (")[0]
    return ", ".join(part for part in (name, country_of(printed), printed.housing) if part)


def country_of(printed: PublishedRate) -> str:
    return COUNTRIES.get(printed.source.country, printed.source.country)


def _rate(rate: CowYearRate) -> Reading | None:
    return _reading(rate.per_100, rate.interval)


def _reading(value: float | None, interval: Interval | None) -> Reading | None:
    if value is None:
        return None
    return Reading(value, interval.low, interval.high) if interval else Reading(value)
