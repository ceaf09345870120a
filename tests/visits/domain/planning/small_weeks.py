"""Small random weeks on a half-hour grid, as problem documents (hypothesis)."""

from datetime import UTC, datetime, timedelta

from hypothesis import strategies as st

from tests.visits.domain.planning.brute_force import STEP

MONDAY = datetime(2026, 3, 2, tzinfo=UTC)


def moment(steps):
    return (MONDAY + timedelta(minutes=STEP * steps)).isoformat()


@st.composite
def shifts(draw, number):
    day = draw(st.integers(0, 1))
    begin = day * 48 + draw(st.sampled_from([14, 16, 42]))
    length = draw(st.integers(6, 13))
    shift = {
        "id": f"s{number}",
        "crew": draw(st.sampled_from(["ann", "ben"])),
        "base": "yard",
        "start": moment(begin),
        "end": moment(begin + length),
        "cost_fixed": draw(st.sampled_from([0, 500])),
        "cost_per_work_hour": draw(st.sampled_from([0, 1000, 2500])),
        "cost_per_km": draw(st.sampled_from([0, 45.5])),
    }
    if draw(st.booleans()):
        first = begin + draw(st.integers(0, length - 1))
        last = first + draw(st.integers(1, 4))
        shift["meal"] = {
            "minutes": STEP * draw(st.integers(1, 2)),
            "earliest": moment(first),
            "latest": moment(last),
        }
    if draw(st.integers(0, 2)) == 0:
        shift["max_work_minutes"] = STEP * draw(st.integers(3, 10))
    if draw(st.integers(0, 2)) == 0:
        shift["max_cows"] = draw(st.integers(5, 30))
    return shift


@st.composite
def jobs(draw, number, sites, week):
    windows = []
    for _ in range(draw(st.integers(1, 2))):
        shift = draw(st.sampled_from(week))
        begin = int((datetime.fromisoformat(shift["start"]) - MONDAY).total_seconds()) // (60 * STEP)
        first = begin + draw(st.integers(-2, 8))
        windows.append({"start": moment(first), "end": moment(first + draw(st.integers(1, 10)))})
    job = {
        "id": f"j{number}",
        "site": draw(st.sampled_from(sites)),
        "minutes": STEP * draw(st.integers(0, 4)),
        "cows": draw(st.integers(0, 12)),
        "windows": windows,
    }
    if draw(st.booleans()):
        job["leave_out_cost"] = draw(st.sampled_from([0, 800, 3000, 20000]))
    if draw(st.integers(0, 2)) == 0:
        job |= {
            "due": draw(st.sampled_from(["2026-03-01", "2026-03-02", "2026-03-03"])),
            "late_cost_per_day": 900,
        }
    if draw(st.integers(0, 4)) == 0:
        job["crews"] = draw(st.sampled_from([["ann"], ["ben"], ["ann", "ben"]]))
    if draw(st.integers(0, 7)) == 0:
        window = draw(st.sampled_from(windows))
        job["fixed"] = {"shift": draw(st.sampled_from(week))["id"], "start": window["start"]}
    return job


@st.composite
def small_weeks(draw, most_jobs=5, least_jobs=0):
    sites = [f"f{number}" for number in range(draw(st.integers(1, 4)))]
    places = ["yard", *sites]
    drive = st.lists(st.integers(0, 3), min_size=len(places), max_size=len(places))
    table = draw(st.lists(drive, min_size=len(places), max_size=len(places)))
    week = [draw(shifts(number)) for number in range(draw(st.integers(1, 2)))]
    return {
        "format": "trimops-week-problem/1",
        "timezone": draw(st.sampled_from(["Europe/London", "Pacific/Auckland"])),
        "bases": [{"id": "yard", "lat": 54.2, "lon": -2.3}],
        "sites": [
            {"id": site, "lat": 54.3, "lon": -2.4, "hygiene": draw(st.integers(0, 2))} for site in sites
        ],
        "travel": {
            "kind": "matrix",
            "places": places,
            "minutes": [[STEP * steps for steps in row] for row in table],
            "km": [[12.5 * steps for steps in row] for row in table],
        },
        "shifts": week,
        "jobs": [
            draw(jobs(number, sites, week)) for number in range(draw(st.integers(least_jobs, most_jobs)))
        ],
    }
