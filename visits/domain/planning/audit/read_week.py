"""A week problem document to the audit's own picture of it."""

from zoneinfo import ZoneInfo

from visits.domain.planning.audit.documents import Unreadable
from visits.domain.planning.audit.part import Faults, Part
from visits.domain.planning.audit.read_jobs import read_job
from visits.domain.planning.audit.read_shifts import read_shift
from visits.domain.planning.audit.read_travel import read_travel
from visits.domain.planning.audit.values import COUNT, NUMBER, TEXT, Kind, Misread
from visits.domain.planning.audit.week import Week

FORMAT = "trimops-week-problem/1"
SHIFT_KEYS = "id crew base start end max_work_minutes max_cows meal cost_fixed cost_per_work_hour cost_per_km"
JOB_KEYS = "id site minutes cows windows crews due late_cost_per_day leave_out_cost fixed"


def read_week(document: object) -> Week:
    """The week of a problem document. Raises Unreadable with every fault, by JSON path."""
    faults = Faults()
    problem = Part(document, "", "format timezone bases sites travel shifts jobs", faults)
    if problem.need("format", TEXT) != FORMAT and problem.has("format"):
        problem.wrong("format", f"is not {FORMAT}")
    bases, sites = problem.parts("bases", "id lat lon"), problem.parts("sites", "id lat lon hygiene")
    points = dict(_point(place) for place in bases + sites)
    shifts = [read_shift(part, bases) for part in problem.parts("shifts", SHIFT_KEYS)]
    jobs = [read_job(part, sites, shifts) for part in problem.parts("jobs", JOB_KEYS)]
    for key, found in (("bases", len(bases) + len(sites)), ("shifts", len(shifts)), ("jobs", len(jobs))):
        distinct = {"bases": points, "shifts": {s.id for s in shifts}, "jobs": {j.id for j in jobs}}[key]
        if len(distinct) < found:
            problem.wrong(key, "has an id that is given twice")
    week = Week(
        zone=problem.need("timezone", ZONE),
        legs=read_travel(problem, points),
        hygiene={site.need("id", TEXT): site.may("hygiene", COUNT, 0) for site in sites},
        shifts={shift.id: shift for shift in shifts},
        jobs={job.id: job for job in jobs},
    )
    if faults.broken or faults.surplus:
        raise Unreadable(list(dict.fromkeys(faults.broken + faults.surplus)))
    return week


def _point(place: Part) -> tuple[str, tuple[float, float]]:
    lat, lon = place.need("lat", NUMBER), place.need("lon", NUMBER)
    if abs(lat) > 90:
        place.wrong("lat", "is not between -90 and 90")
    if abs(lon) > 180:
        place.wrong("lon", "is not between -180 and 180")
    return place.need("id", TEXT), (float(lat), float(lon))


def _zone(value: object) -> ZoneInfo:
    try:
        return ZoneInfo(TEXT.read(value))
    except (ValueError, OSError, KeyError) as wrong:
        raise Misread("is not a time zone") from wrong


ZONE = Kind(_zone, ZoneInfo("UTC"))
