"""The figures of one plan document that a bench compares, audited before they are used."""

import json
from dataclasses import dataclass

from visits.domain.planning.audit import audit_week


class PlanWithBreach(Exception):
    """A plan broke a rule: its figures mean nothing."""


@dataclass(frozen=True)
class Figures:
    """`missing` counts jobs that must be planned and are not; money in pence, hours of work, kilometres."""

    missing: int
    done: int
    cost: float
    km: float
    hours: float

    def ratio(self, ours: "Figures") -> float | None:
        """This plan's cost as a ratio of ours; none where it leaves out more that must be done."""
        return None if self.missing > ours.missing or not ours.cost else self.cost / ours.cost


def figures(problem: dict, plan: dict) -> Figures:
    """Audit, then count. Raises PlanWithBreach."""
    written = json.loads(json.dumps(plan))
    breaches = audit_week(problem, written)
    if breaches:
        raise PlanWithBreach("\n".join(breaches))
    musts = {job["id"] for job in problem["jobs"] if "leave_out_cost" not in job}
    return Figures(
        missing=sum(out["job"] in musts for out in written["left_out"]),
        done=sum(len(shift["stops"]) for shift in written["shifts"]),
        cost=written["cost"]["total"],
        km=sum(shift["km"] for shift in written["shifts"]),
        hours=sum(shift["work_minutes"] for shift in written["shifts"]) / 60,
    )
