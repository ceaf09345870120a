"""Told hours that the new plan keeps become rules of its problem, so that the exact timing and the audit keep them."""

from collections.abc import Iterator, Mapping
from datetime import datetime, timedelta

from visits.domain.planning.board import Week
from visits.domain.planning.measures import instant
from visits.domain.planning.replan.broken_promises import Document, Part, parts
from visits.domain.planning.replan.priced_board import PricedBoard

Span = tuple[datetime, datetime]


def keep_told(document: Document, board: PricedBoard, week: Week) -> dict[str, object]:
    """The problem in which each told visit that `week` does in time may start at no other hour.

    The windows of such a visit are cut to starts within the slack of its told hour; nothing else changes.
    """
    kept = dict(_kept(board, week))
    jobs = [_cut(job, kept[str(job["id"])]) if job["id"] in kept else job for job in parts(document, "jobs")]
    return {**document, "jobs": jobs}


def _kept(board: PricedBoard, week: Week) -> Iterator[tuple[str, Span]]:
    """Job id -> the earliest start and the latest finish that keep its told hour, where `week` keeps it."""
    problem = board.problem
    for shift, order in enumerate(week):
        if not any(job in board.told for job in order):
            continue
        for job, start in zip(order, board.starts_of(shift, order), strict=True):
            told = board.told.get(job)
            if told is not None and abs(start - told.start) <= told.slack:
                first, last = told.start - told.slack, told.start + told.slack + problem.jobs[job].length
                yield problem.jobs[job].id, (instant(first, problem.zone), instant(last, problem.zone))


def _cut(job: Part, span: Span) -> Part:
    length = timedelta(minutes=float(str(job["minutes"])))
    cut = [(max(start, span[0]), min(end, span[1])) for start, end in _windows(job)]
    kept = [(a, b) for a, b in cut if b - a >= length]
    return {**job, "windows": [{"start": a.isoformat(), "end": b.isoformat()} for a, b in kept]}


def _windows(job: Mapping[str, object]) -> Iterator[Span]:
    for window in parts(job, "windows"):
        yield datetime.fromisoformat(str(window["start"])), datetime.fromisoformat(str(window["end"]))
