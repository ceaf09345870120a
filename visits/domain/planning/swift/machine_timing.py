"""Exact cost of an order of jobs in a shift, in machine code.

A way through the first stops is a label (T, W, L, late): leaving the base at `leave` <= L, the crew is free again
at max(T, leave + W). T is the earliest finish, W the time without waits, L the latest leaving that keeps every
opening chosen. The least time away is then max(W, T - L). Each choice of opening, and of where the meal is eaten,
is a label of its own; one that is nowhere better than another is dropped. After Tilk and Irnich 2017 (dynamic
programming for the minimum tour duration problem), from memory; the meal and the several openings are ours.

A set of labels is `labels` (2, MOST, 3) int64, `late` (2, MOST) float64 and `many` (2,): fed ones, hungry ones.
"""

from visits.domain.planning.compiled import compiled
from visits.domain.planning.swift.arrays import Floats, Ints, WeekArrays
from visits.domain.planning.swift.columns import (
    END,
    FED_LEAVE,
    LENGTH,
    MEAL,
    MEAL_EARLIEST,
    MEAL_LATEST,
    PER_TICK,
    START,
    WORK,
)

MOST = 24
"""Labels kept at a stop; what is dropped beyond can only make an order look dearer than it is."""
FED, HUNGRY = 0, 1
INF = 1e300


@compiled
def push(labels: Ints, late: Floats, count: int, t: int, w: int, last: int, price: float) -> int:
    """Put a label into one set of `count`; returns the new count."""
    for i in range(count):
        if labels[i, 0] <= t and labels[i, 1] <= w and labels[i, 2] >= last and late[i] <= price:
            return count
    kept = 0
    for i in range(count):
        if not (t <= labels[i, 0] and w <= labels[i, 1] and last >= labels[i, 2] and price <= late[i]):
            if kept != i:
                labels[kept, 0], labels[kept, 1], labels[kept, 2] = labels[i, 0], labels[i, 1], labels[i, 2]
                late[kept] = late[i]
            kept += 1
    if kept == MOST:
        kept -= 1
    labels[kept, 0], labels[kept, 1], labels[kept, 2] = t, w, last
    late[kept] = price
    return kept + 1


@compiled
def begin(week: WeekArrays, shift: int, labels: Ints, late: Floats, many: Ints) -> None:
    """Labels at the base, before leaving."""
    row = week.shift[shift]
    many[FED] = many[HUNGRY] = 0
    leave = row[START] if row[MEAL] < 0 else row[FED_LEAVE]
    if leave <= row[END]:
        many[FED] = push(labels[FED], late[FED], 0, leave, 0, row[END], 0.0)
    if row[MEAL] >= 0:
        many[HUNGRY] = push(labels[HUNGRY], late[HUNGRY], 0, row[START], 0, row[END], 0.0)


@compiled
def arrive(
    week: WeekArrays,
    cell: int,
    length: int,
    t: int,
    w: int,
    last: int,
    price: float,
    labels: Ints,
    late: Floats,
    count: int,
) -> int:
    """Add what comes of being ready (at t) to begin the job of this cell; returns the new count."""
    for o in range(week.open_at[cell], week.open_at[cell + 1]):
        closes = week.opens[o, 1]
        if t <= closes:
            done = max(t, week.opens[o, 0]) + length
            by = min(last, closes - w)
            count = push(labels, late, count, done, w + length, by, price + week.open_late[o])
    return count


@compiled
def extend(
    week: WeekArrays,
    shift: int,
    job: int,
    leg: int,
    first: bool,
    labels: Ints,
    late: Floats,
    many: Ints,
    new: Ints,
    new_late: Floats,
    new_many: Ints,
) -> bool:
    """From the labels at one stop to those after `job`, `leg` deciseconds away; false where there are none."""
    cell, length = shift * week.job.shape[0] + job, week.job[job, LENGTH]
    row = week.shift[shift]
    meal, earliest, latest = row[MEAL], row[MEAL_EARLIEST], row[MEAL_LATEST]
    fed = hungry = 0
    for side in range(2):
        for i in range(many[side]):
            t, w, last, price = labels[side, i, 0], labels[side, i, 1], labels[side, i, 2], late[side, i]
            if side == FED:
                fed = arrive(week, cell, length, t + leg, w + leg, last, price, new[FED], new_late[FED], fed)
                continue
            hungry = arrive(
                week, cell, length, t + leg, w + leg, last, price, new[HUNGRY], new_late[HUNGRY], hungry
            )
            for on_arrival in range(2):
                at, done = (t + leg, w + leg) if on_arrival else (t, w)
                if at > latest or (first and not on_arrival):
                    continue
                then = max(at, earliest) + meal + (0 if on_arrival else leg)
                by = min(last, latest - done)
                fed = arrive(
                    week, cell, length, then, w + leg + meal, by, price, new[FED], new_late[FED], fed
                )
    new_many[FED], new_many[HUNGRY] = fed, hungry
    return fed + hungry > 0


@compiled
def away(row: Ints, rate: float, t: int, w: int, last: int, price: float) -> float:
    """Cost of work and lateness of a label that is back at the base; INF where it breaks a limit."""
    if t > row[END]:
        return INF
    work = max(w, t - min(last, row[END] - w))
    return INF if work > row[WORK] else work * rate + price


@compiled
def go_home(week: WeekArrays, shift: int, leg: int, labels: Ints, late: Floats, many: Ints) -> float:
    """Least cost of work and lateness after the last stop; INF where none keeps the rules."""
    row, rate, best = week.shift[shift], week.rate[shift, PER_TICK], INF
    meal, earliest, latest = row[MEAL], row[MEAL_EARLIEST], row[MEAL_LATEST]
    for i in range(many[FED]):
        t, w, last = labels[FED, i, 0] + leg, labels[FED, i, 1] + leg, labels[FED, i, 2]
        best = min(best, away(row, rate, t, w, last, late[FED, i]))
    at_home = earliest
    if earliest + meal <= row[END]:
        at_home = max(at_home, min(latest, row[END] - meal))
    for i in range(many[HUNGRY]):
        t, w, last, price = labels[HUNGRY, i, 0], labels[HUNGRY, i, 1], labels[HUNGRY, i, 2], late[HUNGRY, i]
        if t + leg <= at_home:
            best = min(best, away(row, rate, t + leg, w + leg, min(last, at_home - w - leg), price))
        if t <= latest:
            then = max(t, earliest) + meal + leg
            best = min(best, away(row, rate, then, w + meal + leg, min(last, latest - w), price))
    return best
