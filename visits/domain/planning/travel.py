"""Travel tables of a week problem: from the given matrix, or estimated from the map."""

from geographiclib.geodesic import Geodesic

from visits.domain.planning.measures import deciseconds, metres
from visits.domain.planning.problem import Travel
from visits.domain.planning.problem_form import BaseForm, EstimateForm, MatrixForm, SiteForm


def geodesic_km(start: tuple[float, float], end: tuple[float, float]) -> float:
    """Kilometres along the shortest line on WGS 84 between two (latitude, longitude) pairs, degrees.

    Source: C. F. F. Karney, Algorithms for geodesics (2013), through geographiclib.
    """
    line = Geodesic.WGS84.Inverse(*start, *end, Geodesic.DISTANCE)
    return float(line["s12"]) / 1000


def matrix_travel(form: MatrixForm, places: list[str]) -> Travel:
    """The given tables, in the order of `places`; a place to itself is 0 whatever the table says."""
    at = [form.places.index(place) for place in places]
    times = tuple(tuple(0 if a == b else deciseconds(form.minutes[a][b]) for b in at) for a in at)
    lengths = tuple(tuple(0 if a == b else metres(form.km[a][b]) for b in at) for a in at)
    return Travel(times, lengths)


def estimate_travel(form: EstimateForm, places: list[BaseForm | SiteForm]) -> Travel:
    """km = geodesic x circuity; minutes = km / kmh x 60 + minutes_per_leg; 0 from a place to itself."""
    size = range(len(places))
    points = [(place.lat, place.lon) for place in places]
    half = {(a, b): geodesic_km(points[a], points[b]) * form.circuity for a in size for b in size if a < b}
    km = [[half.get((min(a, b), max(a, b)), 0.0) for b in size] for a in size]
    times = tuple(tuple(0 if a == b else _drive(form, km[a][b]) for b in size) for a in size)
    return Travel(times, tuple(tuple(metres(km[a][b]) for b in size) for a in size))


def _drive(form: EstimateForm, km: float) -> int:
    return deciseconds(km / form.kmh * 60 + form.minutes_per_leg)
