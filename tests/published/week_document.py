"""What every converter writes alike: the frame of a week problem in UTC from Monday 2 March 2026, places p0, p1, ..."""

from datetime import UTC, datetime, timedelta

MONDAY = datetime(2026, 3, 2, tzinfo=UTC)


def clock(minutes: float, day: int = 0) -> str:
    """So many minutes after midnight of that day, as the contract writes instants."""
    return (MONDAY + timedelta(days=day, minutes=minutes)).isoformat()


def matrix(minutes: list[list[float]], km: list[list[float]]) -> dict:
    return {
        "kind": "matrix",
        "places": [f"p{number}" for number in range(len(km))],
        "minutes": minutes,
        "km": km,
    }


def week_document(
    *, spots: list[tuple[float, float]], travel: dict, shifts: list[dict], jobs: list[dict]
) -> dict:
    """A problem document. `spots`: plane coordinates, the base first; with a matrix they only mark the map."""
    places = [
        {"id": f"p{number}", "lat": 54 + y / 100_000, "lon": -2 + x / 100_000}
        for number, (x, y) in enumerate(spots)
    ]
    return {
        "format": "trimops-week-problem/1",
        "timezone": "UTC",
        "bases": places[:1],
        "sites": places[1:],
        "travel": travel,
        "shifts": shifts,
        "jobs": jobs,
    }
