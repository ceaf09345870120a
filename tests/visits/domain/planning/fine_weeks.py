"""Random small weeks off every grid: instants of microseconds, minutes and kilometres of many decimals, two bases."""

from datetime import UTC, datetime, timedelta
from random import Random

MONDAY = datetime(2026, 3, 2, tzinfo=UTC)
PLACES = ["yard", "barn", "f0", "f1", "f2"]


def fine_week(seed: int, most_jobs: int = 6) -> dict:
    chance = Random(seed)
    shifts = [shift(chance, at) for at in range(chance.randint(1, 3))]
    return {
        "format": "trimops-week-problem/1",
        "timezone": chance.choice(["Europe/London", "Pacific/Auckland", "America/St_Johns"]),
        "bases": [place(chance, name) for name in PLACES[:2]],
        "sites": [place(chance, name) | {"hygiene": chance.choice([0, 0, 1])} for name in PLACES[2:]],
        "travel": travel(chance),
        "shifts": shifts,
        "jobs": [job(chance, at, shifts) for at in range(chance.randint(1, most_jobs))],
    }


def fine(chance: Random, minutes: float) -> float:
    """Near a whole minute, never on a tenth of a second."""
    return max(0.0, minutes + chance.uniform(0, 0.3))


def moment(chance: Random, minutes: float) -> str:
    return (MONDAY + timedelta(minutes=fine(chance, minutes))).isoformat()


def place(chance: Random, name: str) -> dict:
    return {"id": name, "lat": chance.uniform(54, 54.6), "lon": chance.uniform(-2.6, -2)}


def travel(chance: Random) -> dict:
    if chance.random() < 0.5:
        return {"kind": "estimate", "circuity": 1.3417, "kmh": 48.3, "minutes_per_leg": 2.01}
    size = range(len(PLACES))
    minutes = [[fine(chance, chance.choice([0, 10, 30])) for _ in size] for _ in size]
    return {
        "kind": "matrix",
        "places": PLACES,
        "minutes": minutes,
        "km": [[chance.uniform(0, 40) for _ in size] for _ in size],
    }


def shift(chance: Random, at: int) -> dict:
    begin, length = chance.choice([420, 480, 1200, 1860]), chance.randint(200, 700)
    made = {
        "id": f"s{at}",
        "crew": chance.choice(["ann", "bob"]),
        "base": chance.choice(PLACES[:2]),
        "start": moment(chance, begin),
        "end": moment(chance, begin + length),
        "cost_fixed": chance.choice([0, 500.5]),
        "cost_per_work_hour": chance.choice([0, 2500]),
        "cost_per_km": 45.5,
    }
    if chance.random() < 0.6:
        earliest = begin + chance.randint(-60, length)
        made["meal"] = {
            "minutes": fine(chance, chance.choice([0, 30, 45])),
            "earliest": moment(chance, earliest),
            "latest": moment(chance, earliest + chance.choice([10, 150])),
        }
    if chance.random() < 0.4:
        made["max_work_minutes"] = fine(chance, chance.randint(60, 500))
    return made


def job(chance: Random, at: int, shifts: list[dict]) -> dict:
    begin = datetime.fromisoformat(chance.choice(shifts)["start"]) - MONDAY
    first = begin / timedelta(minutes=1) + chance.randint(-60, 400)
    made = {
        "id": f"j{at}",
        "site": chance.choice(PLACES[2:]),
        "minutes": fine(chance, chance.choice([0, 30, 60, 120])),
        "windows": [{"start": moment(chance, first), "end": moment(chance, first + chance.randint(10, 400))}],
    }
    if chance.random() < 0.5:
        made["leave_out_cost"] = chance.choice([0, 2000.25, 8000])
    if chance.random() < 0.3:
        made |= {"due": chance.choice(["2026-03-01", "2026-03-02"]), "late_cost_per_day": 900.5}
    if chance.random() < 0.2:
        made["fixed"] = {"shift": chance.choice(shifts)["id"], "start": made["windows"][0]["start"]}
    return made
