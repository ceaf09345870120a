"""Team orienteering with time windows, from Solomon's files, as week problems.

As in the literature (Righini and Salani, Computers & OR 36 (2009) 1191-1203; Vansteenwegen et al., Computers & OR 36
(2009) 3281-3290): profit = demand, no load limit, distances cut off after one decimal, m vehicles. As a week: roads
cost nothing, and leaving a customer out costs PRICE for each unit of profit.
"""

from tests.published.solomon import Instance, solomon_week

PRICE = 100


def orienteering_week(instance: Instance, vehicles: int) -> dict:
    week = solomon_week(instance)
    shifts = [
        {key: value for key, value in shift.items() if key not in ("max_cows", "cost_per_km")}
        for shift in week["shifts"][:vehicles]
    ]
    jobs = [job | {"leave_out_cost": PRICE * job["cows"]} for job in week["jobs"]]
    return week | {"shifts": shifts, "jobs": jobs}


def profit_of(instance: Instance, cost: float) -> float:
    """The profit collected by a plan of that cost."""
    return sum(each.demand for each in instance.customers) - cost / PRICE
