"""Solomon's instances of vehicle routing with time windows, and the same as week problems.

Format and instances: M. M. Solomon, Operations Research 35 (1987) 254-265. One unit of the file is one minute and one
kilometre; distances are cut off after one decimal, as for the proven totals in fixtures/routing/totals.json.
"""

import json
from dataclasses import dataclass
from math import isqrt
from pathlib import Path

from tests.published.week_document import clock, matrix, week_document

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "routing"
FILES = ("C101", "R101", "R105", "R201", "RC101", "RC108")


@dataclass(frozen=True)
class Customer:
    """A line of the file; number 0 is the depot. Demand in units of load, times in units of time."""

    number: int
    x: int
    y: int
    demand: int
    ready: int
    due: int
    service: int


@dataclass(frozen=True)
class Instance:
    name: str
    vehicles: int
    capacity: int
    customers: tuple[Customer, ...]

    def tenths(self, a: int, b: int) -> int:
        """Distance (and time) from customer to customer in tenths of a unit, cut off, never rounded."""
        one, other = self.customers[a], self.customers[b]
        return isqrt(100 * ((one.x - other.x) ** 2 + (one.y - other.y) ** 2))

    def first(self, size: int) -> "Instance":
        """The depot and the first `size` customers."""
        return Instance(f"{self.name}.{size}", self.vehicles, self.capacity, self.customers[: size + 1])


def read_solomon(name: str, size: int) -> Instance:
    lines = (FOLDER / "solomon" / f"{name}.txt").read_text().splitlines()
    rows = [[int(word) for word in line.split()] for line in lines if line.strip()[:1].isdecimal()]
    (vehicles, capacity), *customers = rows
    return Instance(name, vehicles, capacity, tuple(Customer(*row) for row in customers)).first(size)


def published(kind: str) -> dict:
    """The published totals (or rounds) of one kind, by instance."""
    return json.loads((FOLDER / "totals.json").read_text())[kind]["values"]


def solomon_week(instance: Instance) -> dict:
    """One shift per vehicle with a crew of its own; only kilometres cost; every customer must be served."""
    depot = instance.customers[0]
    shifts = [
        {
            "id": f"v{number}",
            "crew": f"crew{number}",
            "base": "p0",
            "start": clock(depot.ready),
            "end": clock(depot.due),
            "max_cows": instance.capacity,
            "cost_per_km": 1,
        }
        for number in range(1, instance.vehicles + 1)
    ]
    return week_document(
        spots=[(each.x, each.y) for each in instance.customers],
        travel=travel(instance),
        shifts=shifts,
        jobs=[job(each) for each in instance.customers[1:]],
    )


def travel(instance: Instance) -> dict:
    size = range(len(instance.customers))
    table = [[instance.tenths(a, b) / 10 for b in size] for a in size]
    return matrix(table, table)


def job(customer: Customer) -> dict:
    return {
        "id": f"j{customer.number}",
        "site": f"p{customer.number}",
        "minutes": customer.service,
        "cows": customer.demand,
        "windows": [window(customer)],
    }


def window(customer: Customer, day: int = 0) -> dict:
    """The file bounds the start of the service, the contract the whole of it."""
    return {"start": clock(customer.ready, day), "end": clock(customer.due + customer.service, day)}
