"""The room for a job between two stops of a round: all its starts that keep every rule, exactly, and the least cost.

What lies before and behind is known as functions of time (`order_figures`); the drives to and from the job join
them. The meal falls before it, behind it, or on one of these two drives. A start is good if some leaving and some
return fit it and lie no further apart than the crew may work.
"""

from collections.abc import Iterator
from typing import NamedTuple

from visits.domain.planning.offers.guest import Guest
from visits.domain.planning.offers.order_figures import OrderFigures
from visits.domain.planning.offers.pieces import NEVER, Pieces, chained, meal_on_drive


class Room(NamedTuple):
    """Starts from `first` to `last` (deciseconds), every one of them good; `worth` is the least price of work and
    of this job's own lateness among them, and `work` the deciseconds of that."""

    first: int
    last: int
    worth: float
    work: int


class Gap(NamedTuple):
    """Between stop `at` - 1 and stop `at` (the base at both ends): the drives to the job and on."""

    at: int
    to: int
    on: int


def rooms(figures: OrderFigures, guest: Guest, at: int) -> list[Room]:
    """Every stretch of good starts at that position, in order of time; none where it cannot be."""
    gap = _gap(figures, guest, at)
    if not _may_fit(figures, guest, gap):
        return []
    found = [
        room
        for before, behind in _ways(figures, guest, gap)
        for room in _met(figures, guest, gap, before, behind)
    ]
    return _merged(found)


def _gap(figures: OrderFigures, guest: Guest, at: int) -> Gap:
    times, places, here = figures.board.problem.travel.times, figures.places, guest.job.place
    return Gap(at, times[places[at]][here], times[here][places[at + 1]])


def _may_fit(figures: OrderFigures, guest: Guest, gap: Gap) -> bool:
    """False only where it cannot fit: herds, cows, hours worked without a wait, earliest pass and latest pass."""
    job, shift, levels, at = guest.job, figures.shift, figures.levels, gap.at
    if (at and levels[at - 1] > job.hygiene) or (at < len(levels) and levels[at] < job.hygiene):
        return False
    if shift.max_cows is not None and figures.cows + job.cows > shift.max_cows:
        return False
    longer = gap.to + gap.on - figures.board.problem.travel.times[figures.places[at]][figures.places[at + 1]]
    if shift.max_work is not None and figures.nonstop + job.length + longer > shift.max_work:
        return False
    opened = guest.openings[figures.shift_at]
    earliest, latest = figures.backward.last_ready(len(levels) - at), figures.onward.last_ready(at)
    if not opened or earliest is None or latest is None:
        return False
    soonest, last = gap.to - earliest, latest - gap.on - job.length
    return any(max(first, soonest) <= min(end, last) for first, end, _ in opened)


def _ways(figures: OrderFigures, guest: Guest, gap: Gap) -> Iterator[tuple[Pieces, Pieces]]:
    """What is before (clock negated) and behind, taken together: one pair for each place of the meal."""
    stops = len(figures.order)
    before, behind = figures.backward, figures.onward
    back = stops - gap.at
    if figures.meal is None or figures.meal_backward is None:
        yield _before(before.fed[back], gap), _behind(behind.fed[gap.at], guest, gap)
        return
    plain_before, plain_behind = _before(before.fed[back], gap), _behind(behind.fed[gap.at], guest, gap)
    for way in before.hungry[back]:
        yield _before(way, gap), plain_behind
    for way in behind.hungry[gap.at]:
        yield plain_before, _behind(way, guest, gap)
    eaten = meal_on_drive(gap.to, figures.meal_backward, to_base=gap.at == 0)
    yield chained(before.fed[back], eaten), plain_behind
    eaten = meal_on_drive(gap.on, figures.meal, to_base=gap.at == stops)
    yield plain_before, _moved(chained(behind.fed[gap.at], eaten), guest.job.length)


def _before(way: Pieces, gap: Gap) -> Pieces:
    return _moved(way, gap.to)


def _behind(way: Pieces, guest: Guest, gap: Gap) -> Pieces:
    return _moved(way, guest.job.length + gap.on)


def _moved(way: Pieces, by: int) -> Pieces:
    """The same function of a time that is so much earlier."""
    return [
        piece._replace(
            first=piece.first if piece.first == -NEVER else piece.first - by,
            last=piece.last - by,
            add=piece.add + by if piece.flows else piece.add,
        )
        for piece in way
    ]


def _met(figures: OrderFigures, guest: Guest, gap: Gap, before: Pieces, behind: Pieces) -> Iterator[Room]:
    """Where both are known at once and the work between them is not too long."""
    limit = NEVER if figures.shift.max_work is None else figures.shift.max_work
    rate = figures.shift.cost_per_hour / 36_000
    for opens, closes, late in guest.openings[figures.shift_at]:
        for begins, ends, add, flows in before:
            low, high = max(opens, -ends), min(closes, -begins)
            if low > high:
                continue
            for since, until, more, goes_on in behind:
                first, last = max(low, since), min(high, until)
                if first > last:
                    continue
                # work at a start t: add + more, and + t where only the return moves, - t where only the leaving does
                slope = int(goes_on) - int(flows)
                if slope > 0:
                    last = min(last, limit - add - more)
                elif slope < 0:
                    first = max(first, add + more - limit)
                work = add + more + slope * (first if slope > 0 else last)
                if first <= last and work <= limit:
                    yield Room(first, last, work * rate + late, work)


def _merged(found: list[Room]) -> list[Room]:
    """Stretches that touch or overlap made one."""
    made: list[Room] = []
    for room in sorted(found):
        if made and room.first <= made[-1].last + 1:
            known = made[-1]
            worth, work = min((known.worth, known.work), (room.worth, room.work))
            made[-1] = Room(known.first, max(known.last, room.last), worth, work)
        else:
            made.append(room)
    return made
