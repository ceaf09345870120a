"""A week problem document to the solver's own form, or every fault in it."""

from zoneinfo import ZoneInfo

from visits.domain.planning.build_problem import build_problem
from visits.domain.planning.check_problem import Reading, faults_between
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.problem_form import (
    BaseForm,
    EstimateForm,
    JobForm,
    MatrixForm,
    ShiftForm,
    SiteForm,
)
from visits.domain.planning.problem_parts import read_list, read_part
from visits.domain.planning.problem_text import document

FORMAT = "trimops-week-problem/1"
KEYS = ("format", "timezone", "bases", "sites", "travel", "shifts", "jobs")


def read_problem(text: str) -> WeekProblem:
    """The problem in `text` (JSON, `trimops-week-problem/1`).

    Figures finer than a tenth of a second or a metre are rounded half up and named in `notes`.
    Raises ProblemFaults with all faults found, one line each.
    """
    raw, faults = document(text)
    faults += [f"{key}: is not a key of a week problem" for key in raw if key not in KEYS]
    faults += [f"{key}: is missing" for key in KEYS if key not in raw]
    if "format" in raw and raw["format"] != FORMAT:
        faults.append(f'format: must be "{FORMAT}"')
    zone = _zone(raw, faults)
    reading = Reading(
        bases=read_list(raw, "bases", BaseForm, faults),
        sites=read_list(raw, "sites", SiteForm, faults),
        travel=_travel(raw, faults),
        shifts=read_list(raw, "shifts", ShiftForm, faults),
        jobs=read_list(raw, "jobs", JobForm, faults),
    )
    faults += faults_between(reading)
    if faults or zone is None:
        raise ProblemFaults(faults)
    return build_problem(reading, zone)


def _zone(raw: dict[str, object], faults: list[str]) -> ZoneInfo | None:
    name = raw.get("timezone")
    try:
        if isinstance(name, str) and name not in ("", "localtime"):
            return ZoneInfo(name)
    except (OSError, ValueError, KeyError):
        pass
    if "timezone" in raw:
        faults.append("timezone: is not a time zone of the IANA list, such as Europe/London")
    return None


def _travel(raw: dict[str, object], faults: list[str]) -> MatrixForm | EstimateForm | None:
    value = raw.get("travel")
    if "travel" not in raw:
        return None
    kind = value.get("kind") if isinstance(value, dict) else None
    if kind == "matrix":
        return read_part(value, "travel", MatrixForm, faults)
    if kind == "estimate":
        return read_part(value, "travel", EstimateForm, faults)
    faults.append(
        'travel.kind: must be "matrix" or "estimate"'
        if isinstance(value, dict)
        else "travel: is not an object"
    )
    return None
