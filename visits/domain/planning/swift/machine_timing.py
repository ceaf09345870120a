"""Exact cost of an order of jobs in a shift, in machine code.

A way through the first stops is a label (T, W, L, late): leaving the base at `leave` <= L, the crew is free again
at max(T, leave + W). T is the earliest finish, W the time without waits, L the latest leaving that keeps every
opening chosen. The least time away is then max(W, T - L). Each choice of opening, and of where the meal is eaten,
is a label of its own; one that is nowhere better than another is dropped. After Tilk and Irnich 2017 (dynamic
programming for the minimum tour duration problem), from memory; the meal and the several openings are ours.

All labels lie in one store, `figures` (N, 3) and `late` (N,). A stop's labels are a row of the store: those of a crew
that has eaten (or need not) from `row * ROW` on, those of a hungry one from `row * ROW + MOST` on; `many` (rows, 2)
says how many there are. Whole arrays and numbers are passed, no slices: each slice would cost as much as a label.
"""

from visits.domain.planning.compiled import compiled
from visits.domain.planning.swift.arrays import Floats, Ints, WeekArrays
from visits.domain.planning.swift.columns import (
    END,
    FED_LEAVE,
    MEAL,
    MEAL_EARLIEST,
    MEAL_LATEST,
    PER_TICK,
    START,
    WORK,
)

MOST = 24
"""Labels kept at a stop; what is dropped beyond can only make an order look dearer than it is."""
ROW = 2 * MOST
FED, HUNGRY = 0, 1
INF = 1e300


@compiled
def push(figures: Ints, late: Floats, at: int, count: int, t: int, w: int, last: int, price: float) -> int:
    """Put a label into the set of `count` that begins at `at`; returns the new count."""
    for i in range(at, at + count):
        if figures[i, 0] <= t and figures[i, 1] <= w and figures[i, 2] >= last and late[i] <= price:
            return count
    kept = at
    for i in range(at, at + count):
        if not (t <= figures[i, 0] and w <= figures[i, 1] and last >= figures[i, 2] and price <= late[i]):
            if kept != i:
                figures[kept, 0], figures[kept, 1] = figures[i, 0], figures[i, 1]
                figures[kept, 2], late[kept] = figures[i, 2], late[i]
            kept += 1
    if kept == at + MOST:
        kept -= 1
    figures[kept, 0], figures[kept, 1], figures[kept, 2] = t, w, last
    late[kept] = price
    return kept + 1 - at


@compiled
def begin(week: WeekArrays, shift: int, figures: Ints, late: Floats, many: Ints, row: int) -> None:
    """Labels at the base, before leaving."""
    start, end, at = week.shift[shift, START], week.shift[shift, END], row * ROW
    hungry = week.shift[shift, MEAL] >= 0
    leave = week.shift[shift, FED_LEAVE] if hungry else start
    many[row, FED] = many[row, HUNGRY] = 0
    if leave <= end:
        many[row, FED] = push(figures, late, at, 0, leave, 0, end, 0.0)
    if hungry:
        many[row, HUNGRY] = push(figures, late, at + MOST, 0, start, 0, end, 0.0)


@compiled
def extend(
    opens: Ints,
    open_late: Floats,
    low: int,
    high: int,
    length: int,
    leg: int,
    meal: int,
    earliest: int,
    latest: int,
    first: bool,
    figures: Ints,
    late: Floats,
    many: Ints,
    source: int,
    target: int,
) -> bool:
    """From the labels of one stop (row `source`) to those after a job `leg` deciseconds away (row `target`).

    The job's openings are `low` to `high`. False where no label is left.
    """
    fed = hungry = 0
    to_fed, to_hungry = target * ROW, target * ROW + MOST
    for i in range(source * ROW, source * ROW + many[source, FED]):
        t, w, last = figures[i, 0] + leg, figures[i, 1] + leg, figures[i, 2]
        for o in range(low, high):
            if t <= opens[o, 1]:
                done, by = max(t, opens[o, 0]) + length, min(last, opens[o, 1] - w)
                fed = push(figures, late, to_fed, fed, done, w + length, by, late[i] + open_late[o])
    for i in range(source * ROW + MOST, source * ROW + MOST + many[source, HUNGRY]):
        t, w, last = figures[i, 0], figures[i, 1], figures[i, 2]
        for o in range(low, high):
            closes, price = opens[o, 1], late[i] + open_late[o]
            if t + leg > closes:
                continue
            done, by = max(t + leg, opens[o, 0]) + length, min(last, closes - w - leg)
            hungry = push(figures, late, to_hungry, hungry, done, w + leg + length, by, price)
            busy = w + leg + meal
            then = max(t + leg, earliest) + meal
            if t + leg <= latest and then <= closes:
                done, by = max(then, opens[o, 0]) + length, min(last, latest - w - leg, closes - busy)
                fed = push(figures, late, to_fed, fed, done, busy + length, by, price)
            then = max(t, earliest) + meal + leg
            if not first and t <= latest and then <= closes:
                done, by = max(then, opens[o, 0]) + length, min(last, latest - w, closes - busy)
                fed = push(figures, late, to_fed, fed, done, busy + length, by, price)
    many[target, FED], many[target, HUNGRY] = fed, hungry
    return fed + hungry > 0


@compiled
def away(end: int, most: int, rate: float, t: int, w: int, last: int, price: float) -> float:
    """Cost of work and lateness of a label that is back at the base; INF where it breaks a limit."""
    if t > end:
        return INF
    work = max(w, t - min(last, end - w))
    return INF if work > most else work * rate + price


@compiled
def go_home(
    week: WeekArrays, shift: int, leg: int, figures: Ints, late: Floats, many: Ints, row: int
) -> float:
    """Least cost of work and lateness after the last stop; INF where none keeps the rules."""
    end, most, rate = week.shift[shift, END], week.shift[shift, WORK], week.rate[shift, PER_TICK]
    best = INF
    for i in range(row * ROW, row * ROW + many[row, FED]):
        t, w, last = figures[i, 0] + leg, figures[i, 1] + leg, figures[i, 2]
        best = min(best, away(end, most, rate, t, w, last, late[i]))
    if many[row, HUNGRY] == 0:
        return best
    meal, earliest, latest = (
        week.shift[shift, MEAL],
        week.shift[shift, MEAL_EARLIEST],
        week.shift[shift, MEAL_LATEST],
    )
    at_home = earliest
    if earliest + meal <= end:
        at_home = max(at_home, min(latest, end - meal))
    for i in range(row * ROW + MOST, row * ROW + MOST + many[row, HUNGRY]):
        t, w, last, price = figures[i, 0], figures[i, 1], figures[i, 2], late[i]
        if t + leg <= at_home:
            by = min(last, at_home - w - leg)
            best = min(best, away(end, most, rate, t + leg, w + leg, by, price))
        if t <= latest:
            then = max(t, earliest) + meal + leg
            best = min(best, away(end, most, rate, then, w + meal + leg, min(last, latest - w), price))
    return best
