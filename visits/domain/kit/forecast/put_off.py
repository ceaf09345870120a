"""Visits that were called off and made a few days later instead: put off, not lost.

Taken for two things they would count double: as a booked visit that brings no use, and as work that nobody had booked.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta

from visits.domain.kit.forecast.visit_use import VisitUse

SOON = timedelta(days=7)
"""A visit to the same farm for the same reason within so many days stands for the one called off (no source)."""


def put_off_as_made(past: Sequence[VisitUse]) -> list[VisitUse]:
    """The visits in order of day; of those put off the later one alone, known as long before as the one called off."""
    visits = sorted(past, key=lambda visit: visit.day)
    called_off: dict[tuple[int, str], int] = {}
    gone: set[int] = set()
    for at, visit in enumerate(visits):
        key = (visit.farm, visit.reason)
        if not visit.is_made:
            called_off[key] = at
            continue
        before = called_off.pop(key, None)
        if before is not None and visit.day - visits[before].day <= SOON:
            gone.add(before)
            visits[at] = replace(visit, notice=_longer(visits[before], visit))
    return [visit for at, visit in enumerate(visits) if at not in gone]


def _longer(off: VisitUse, made: VisitUse) -> int | None:
    if off.notice is None or made.notice is None:
        return None
    return max(made.notice, off.notice)
