"""Weeks of several days, a family of our own: no published multi-period file is in the check data.

The customers of a Solomon file with their windows of the day, over five days with five vans each, as many shifts as
the file has vehicles. With every customer open on every day the days are mere names, so the published total of the
file holds for the week, to the tenth. With customers shut on some days nothing is published: the published total is
then a bound from below, and small ones are proven by `rounds_by_labels.py`.
"""

from tests.published.solomon import Instance, solomon_week, window
from tests.published.week_document import clock

DAYS, VANS = 5, 5


def open_days(number: int, shut: int) -> list[int]:
    """Customer `number` is shut on so many days in a row, beginning with day `number` modulo 5."""
    closed = {(number + later) % DAYS for later in range(shut)}
    return [day for day in range(DAYS) if day not in closed]


def several_days_week(instance: Instance, shut: int) -> dict:
    week, depot = solomon_week(instance), instance.customers[0]
    plain = week["shifts"][0]
    shifts = [
        plain
        | {
            "id": f"day{day}-van{van}",
            "crew": f"van{van}",
            "start": clock(depot.ready, day),
            "end": clock(depot.due, day),
        }
        for day in range(DAYS)
        for van in range(VANS)
    ]
    jobs = [
        job | {"windows": [window(each, day) for day in open_days(each.number, shut)]}
        for job, each in zip(week["jobs"], instance.customers[1:], strict=True)
    ]
    return week | {"shifts": shifts, "jobs": jobs}
