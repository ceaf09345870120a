"""A plan document as the diary would hold it, with promises by lot."""

from datetime import datetime

from visits.domain.planning.replan.plan_in_force import InForce, Promise


def diary(plan, promises=()):
    """Every stop of `plan`; the promise of each by its place in `promises`, planned only beyond that."""
    stops = [(shift["id"], stop) for shift in plan["shifts"] for stop in shift["stops"]]
    firm = [*promises, *[Promise.PLANNED] * len(stops)]
    return [
        InForce(stop["job"], shift, datetime.fromisoformat(stop["start"]), promise)
        for (shift, stop), promise in zip(stops, firm, strict=False)
    ]


def placed(plan):
    return {
        stop["job"]: (shift["id"], datetime.fromisoformat(stop["start"]))
        for shift in plan["shifts"]
        for stop in shift["stops"]
    }
