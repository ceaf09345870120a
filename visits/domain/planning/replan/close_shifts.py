"""A shift in the middle of which nothing goes out."""

from datetime import datetime

from visits.domain.planning.replan.broken_promises import Part


def closed(shift: Part, since: datetime, until: datetime) -> Part | None:
    """What is left of a shift (a part of a problem document) closed from `since` to `until`; None where nothing is.

    A shift leaves its base once and returns once, so of a day cut in two the longer stretch is kept and the shorter
    one given up. The van is home before, and leaves its base after, the time it is out of action.
    """
    start, end = datetime.fromisoformat(str(shift["start"])), datetime.fromisoformat(str(shift["end"]))
    if until <= start or since >= end or until <= since:
        return shift
    pieces = [(a, b) for a, b in ((start, since), (until, end)) if b > a]
    if not pieces:
        return None
    first, last = max(pieces, key=lambda piece: piece[1] - piece[0])
    return {**shift, "start": _written(first, start), "end": _written(last, start)}


def _written(moment: datetime, like: datetime) -> str:
    return moment.astimezone(like.tzinfo).isoformat()
