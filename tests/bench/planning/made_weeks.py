"""Weeks drawn by a seeded generator: invented farms, plausible hours (common practice, no source)."""

from datetime import UTC, datetime, timedelta
from random import Random

MONDAY = datetime(2026, 3, 2, tzinfo=UTC)
DAYS = 5


def at(day, hour):
    return (MONDAY + timedelta(days=day, minutes=round(hour * 60))).isoformat()


def made_week(farms, vans, seed):
    """A week problem document with `farms` jobs, `vans` crews and five days."""
    dice = Random(f"{farms}-{vans}-{seed}")
    crews = ["ann", "ben", "cal"][:vans]
    shifts = [shift(crew, day) for day in range(DAYS) for crew in crews]
    sites = [site(number, dice) for number in range(farms)]
    return {
        "format": "trimops-week-problem/1",
        "timezone": "Europe/London",
        "bases": [{"id": "yard", "lat": 54.25, "lon": -2.35}],
        "sites": sites,
        "travel": {"kind": "estimate", "circuity": 1.35, "kmh": 48, "minutes_per_leg": 2},
        "shifts": shifts,
        "jobs": jobs(sites, crews, shifts, dice),
    }


def shift(crew, day):
    return {
        "id": f"d{day}-{crew}",
        "crew": crew,
        "base": "yard",
        "start": at(day, 7),
        "end": at(day, 17.5),
        "max_work_minutes": 600,
        "max_cows": 70,
        "meal": {"minutes": 30, "earliest": at(day, 11.5), "latest": at(day, 14)},
        "cost_fixed": 1500,
        "cost_per_work_hour": 2500,
        "cost_per_km": 45,
    }


def site(number, dice):
    level = dice.choices([0, 1, 2, 3], [2, 5, 3, 0.4])[0]
    lat, lon = 54.25 + dice.gauss(0, 0.16), -2.35 + dice.gauss(0, 0.26)
    return {"id": f"f{number}", "lat": round(lat, 5), "lon": round(lon, 5), "hygiene": level}


def jobs(sites, crews, shifts, dice):
    made, load = [], 0.0
    room = len(shifts) * 60 * 5.6
    for number, farm in enumerate(sites):
        cows = max(2, min(35, round(dice.lognormvariate(1.9, 0.7))))
        job = {"id": f"j{number}", "site": farm["id"], "minutes": 20 + 5 * cows, "cows": cows}
        job["windows"] = windows(dice)
        load += job["minutes"] + 22
        if dice.random() < 0.5:
            job |= {
                "due": f"2026-03-0{dice.randint(2, 7)}",
                "late_cost_per_day": dice.choice([500, 1000, 2000]),
            }
        if load > room or dice.random() < 0.4:
            job["leave_out_cost"] = dice.choice([6000, 12000, 20000])
        if len(crews) > 1 and dice.random() < 0.15:
            job["crews"] = [dice.choice(crews)]
        made.append(job)
    for job in dice.sample(made, min(2, len(made) // 6)):
        promise(job, crews, dice)
    return made


def windows(dice):
    """On four days in five, either between the milkings, or in the morning and the afternoon."""
    kept = [day for day in range(DAYS) if dice.random() < 0.8] or [dice.randrange(DAYS)]
    split, early, late = dice.random() < 0.4, dice.choice([7.5, 8.5, 9.5]), dice.choice([14.5, 15.5, 17])
    spans = [(early, 12.25), (13, late)] if split else [(early, late)]
    return [{"start": at(day, a), "end": at(day, b)} for day in kept for a, b in spans]


def promise(job, crews, dice):
    """A fixed start in the job's first window of a day, where the job is short enough for it."""
    job.pop("crews", None)
    window = dice.choice(job["windows"])
    begin, end = datetime.fromisoformat(window["start"]), datetime.fromisoformat(window["end"])
    if begin + timedelta(minutes=job["minutes"] + 30) <= end:
        start = begin + timedelta(minutes=30)
        job["fixed"] = {"shift": f"d{(begin - MONDAY).days}-{dice.choice(crews)}", "start": start.isoformat()}
