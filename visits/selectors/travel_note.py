"""What a week's page says of where its drives come from."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from visits.domain.travel.travel_source import TravelSource
from visits.models import WeekPlan


@dataclass(frozen=True)
class TravelNote:
    """One line; `is_warning` where the plan rests on less than the installation meant it to."""

    text: str
    is_warning: bool = False


def travel_note(week_plan: WeekPlan | None, zone: ZoneInfo) -> TravelNote | None:
    """None where there is no plan, or one that remembers nothing of its drives."""
    story: Mapping[str, object] = week_plan.travel if week_plan else {}
    if not story:
        return None
    source, counts = TravelSource(str(story["source"])), _counts(story)
    estimated = counts.get(TravelSource.ESTIMATE, 0)
    total = sum(counts.values())
    if story.get("failed_at"):
        return TravelNote(_failed(str(story["failed_at"]), total - estimated, total, zone), is_warning=True)
    if source is TravelSource.ESTIMATE:
        return TravelNote("Distances and times of the drives are estimated; no road map is set up.")
    return TravelNote(_by_road(source, estimated, total))


def is_estimated(week_plan: WeekPlan, start: str, end: str) -> bool:
    """Whether the drive between two places of the plan's problem (`"van-1"`, `"farm-3"`) is an estimate."""
    places, marks = week_plan.travel.get("places", []), week_plan.travel.get("marks", [])
    if start not in places or end not in places:
        return True
    return bool(marks[places.index(start)][places.index(end)] == TravelSource.ESTIMATE.mark)


def _counts(story: Mapping[str, object]) -> dict[TravelSource, int]:
    counts = story.get("counts")
    return {TravelSource(name): int(n) for name, n in counts.items()} if isinstance(counts, dict) else {}


def _failed(failed_at: str, by_road: int, total: int, zone: ZoneInfo) -> str:
    at = datetime.fromisoformat(failed_at).astimezone(zone)
    text = f"Road times could not be had at {at:%H:%M}; distances estimated"
    return f"{text} for {total - by_road} of {total} drives." if by_road else f"{text}."


def _by_road(source: TravelSource, estimated: int, total: int) -> str:
    text = f"Drives by road, from the {source.label}"
    return f"{text}; {estimated} of {total} estimated, where it knows no road." if estimated else f"{text}."
