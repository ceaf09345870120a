"""Realistic working weeks of our own making, as problem documents; the same seed gives the same week.

Farms lie in a few valleys round the yard, open between milkings, some twice a day, most shut for a day or two.
`load` is the work at the crush as a share of the crews' hours, the same at any number of farms; drives, meals and
waits come on top: at 0.3 a head can still fill most weeks, at 0.6 some visits have to wait for next week.
One visit in seven must be done (lame cows), the others have a price for leaving them out; so a week is tight and
yet has a plan. Sizes, hours and prices are common practice without a source; every farm is invented.
"""

from datetime import UTC, date, datetime, timedelta
from random import Random

MONDAY = datetime(2026, 3, 2, tzinfo=UTC)
DAYS = 5
YARD = (54.21, -2.31)
SHIFT_MINUTES = 600
SET_UP, PER_COW = 15, 5.5
HABITS = [[(9.5, 15.5)], [(9.0, 15.0)], [(8.5, 12.0), (13.0, 16.5)], [(7.0, 17.5)]]


def made_up_week(farms: int, vans: int, seed: int, load: float = 0.5) -> dict[str, object]:
    """A week for `farms` farms (one job each) and `vans` crews, Monday to Friday."""
    chance = Random(f"{farms}/{vans}/{seed}")
    shifts = [shift(day, van) for day in range(DAYS) for van in range(vans)]
    typical = load * SHIFT_MINUTES * DAYS * vans / max(1, farms)
    jobs = [job(chance, at, typical, vans) for at in range(farms)]
    promise_some(chance, jobs, shifts)
    return {
        "format": "trimops-week-problem/1",
        "timezone": "Europe/London",
        "bases": [{"id": "yard", "lat": YARD[0], "lon": YARD[1]}],
        "sites": sites(chance, farms),
        "travel": {"kind": "estimate", "circuity": 1.35, "kmh": 48, "minutes_per_leg": 2},
        "shifts": shifts,
        "jobs": jobs,
    }


def moment(day: int, hours: float) -> str:
    return (MONDAY + timedelta(days=day, hours=hours)).isoformat()


def shift(day: int, van: int) -> dict[str, object]:
    return {
        "id": f"day{day + 1}-van{van + 1}",
        "crew": f"van{van + 1}",
        "base": "yard",
        "start": moment(day, 7),
        "end": moment(day, 17.5),
        "max_work_minutes": SHIFT_MINUTES,
        "max_cows": 90,
        "meal": {"minutes": 30, "earliest": moment(day, 11.5), "latest": moment(day, 14)},
        "cost_fixed": 0,
        "cost_per_work_hour": 2500,
        "cost_per_km": 45,
    }


def sites(chance: Random, farms: int) -> list[dict[str, object]]:
    valleys = [(chance.gauss(0, 0.14), chance.gauss(0, 0.24)) for _ in range(5)]
    made: list[dict[str, object]] = []
    for at in range(farms):
        north, east = chance.choice(valleys)
        made.append(
            {
                "id": f"f{at + 1}",
                "lat": round(YARD[0] + north + chance.gauss(0, 0.05), 5),
                "lon": round(YARD[1] + east + chance.gauss(0, 0.08), 5),
                "hygiene": chance.choices([0, 1, 2, 3], [30, 50, 16, 4])[0],
            }
        )
    return made


def job(chance: Random, at: int, typical: float, vans: int) -> dict[str, object]:
    habit = chance.choice(HABITS)
    longest = 60 * max(end - start for start, end in habit)
    wanted = min(longest - 30, typical * chance.choice([1, 1, 1, 2]) * chance.uniform(0.3, 1.3))
    cows = max(1, round((wanted - SET_UP) / PER_COW))
    made: dict[str, object] = {
        "id": f"j{at + 1}",
        "site": f"f{at + 1}",
        "minutes": round(SET_UP + PER_COW * cows, 1),
        "cows": cows,
        "windows": windows(chance, habit),
    }
    if chance.random() < 0.7:
        made["due"] = str(date(2026, 3, 1) + timedelta(days=chance.randint(0, 7)))
        made["late_cost_per_day"] = chance.choice([500, 1500, 1500, 4000])
    if chance.random() > 1 / 7:
        made["leave_out_cost"] = chance.choice([4000, 8000, 8000, 20000]) + 600 * cows
    if vans > 1 and chance.random() < 0.1:
        made["crews"] = [f"van{chance.randint(1, vans)}"]
    return made


def windows(chance: Random, habit: list[tuple[float, float]]) -> list[dict[str, str]]:
    """The farm's habit, on the days it is open."""
    open_days = sorted(chance.sample(range(DAYS), chance.choice([3, 4, 5, 5])))
    return [{"start": moment(day, a), "end": moment(day, b)} for day in open_days for a, b in habit]


def promise_some(chance: Random, jobs: list[dict], shifts: list[dict]) -> None:
    """About one job in fifteen has a promised start, never two in one shift."""
    free = list(shifts)
    for one in chance.sample(jobs, min(len(jobs), max(1, len(jobs) // 15))):
        for window in chance.sample(one["windows"], len(one["windows"])):
            day = window["start"][:10]
            able = [s for s in free if s["start"][:10] == day and s["crew"] in one.get("crews", [s["crew"]])]
            start = max(datetime.fromisoformat(window["start"]), datetime.fromisoformat(f"{day}T10:00Z"))
            if able and start + timedelta(minutes=one["minutes"]) <= datetime.fromisoformat(window["end"]):
                free.remove(able[0])
                one["fixed"] = {"shift": able[0]["id"], "start": start.isoformat()}
                break
