"""The drives of a week between all its places, by road where that is known, else by estimate."""

from collections.abc import Mapping, Sequence
from datetime import datetime

from trimops.kernel.scope import Scope
from visits.domain.travel.place import Place
from visits.domain.travel.travel_figures import TravelFigures
from visits.domain.travel.travel_table import TravelTable, travel_table
from visits.models import RoadTrouble
from visits.selectors.road_legs import is_quiet, known_legs, trouble_of
from visits.selectors.roads_in_use import roads_in_use


def week_travel(scope: Scope, places: Sequence[Place], figures: TravelFigures) -> TravelTable:
    """From what is kept; asks nobody. At most one query."""
    roads = roads_in_use()
    return travel_table(places, figures, known_legs(scope, roads.engine, places), roads.source)


def places_of(problem: Mapping[str, object]) -> list[Place]:
    """The bases and sites of a week problem, in its order; none where it has no such lists."""
    items = [item for name in ("bases", "sites") for item in _list(problem.get(name))]
    return [Place(str(item["id"]), _degrees(item["lat"]), _degrees(item["lon"])) for item in items]


def story_of_problem(
    scope: Scope, problem: Mapping[str, object], figures: TravelFigures, at: datetime
) -> dict[str, object]:
    """The story of a problem whose drives were taken from what is kept at `at`."""
    return travel_story(scope, week_travel(scope, places_of(problem), figures), at)


def travel_story(scope: Scope, table: TravelTable, at: datetime) -> dict[str, object]:
    """What a week plan remembers: source in use, drives of each source, the source of each, and a failure."""
    roads = roads_in_use()
    trouble = trouble_of(scope, roads.engine)
    return {
        "source": roads.source.value,
        "counts": {source.value: number for source, number in table.counts().items()},
        "places": list(table.places),
        "marks": list(table.marks),
        **_failure(trouble if is_quiet(trouble, at) else None, roads.fault, at),
    }


def _failure(trouble: RoadTrouble | None, fault: str, at: datetime) -> dict[str, object]:
    if trouble:
        return {"failed_at": trouble.at.isoformat(), "why": trouble.why}
    return {"failed_at": at.isoformat(), "why": fault} if fault else {}


def _list(found: object) -> list[dict[str, object]]:
    return found if isinstance(found, list) else []


def _degrees(found: object) -> float:
    return float(str(found))
