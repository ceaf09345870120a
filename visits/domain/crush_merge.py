"""Which of several writings shows, when two phones put down the same thing: a rule of the writings alone.

A phone's clock may be wrong by hours. Its wrongness cancels out of the *age* of a writing (the same clock said when
it was made and when it was sent), so the age is taken from the phone and the rest from our own clock. A clock that
jumped between the two is held between the last answer the phone had had and the arrival. An edit always comes after
what it edits. Nothing here depends on the order in which writings arrived.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID

A_MOMENT = timedelta(microseconds=1)
LONGEST_AGE = timedelta(days=3660)


@dataclass(frozen=True)
class Clocks:
    """When a writing was made and sent by the phone's clock; between which moments it must lie on ours."""

    made_at: datetime
    sent_at: datetime
    not_before: datetime | None
    received_at: datetime


def place(clocks: Clocks) -> datetime:
    """The moment on our own clock at which a writing was made; never after its arrival."""
    age = min(max(clocks.sent_at - clocks.made_at, timedelta(0)), LONGEST_AGE)
    corrected = clocks.received_at - age
    if clocks.not_before is not None:
        corrected = max(corrected, clocks.not_before)
    return min(corrected, clocks.received_at)


@dataclass(frozen=True)
class PlacedWriting:
    """What the rule needs of a writing. `group`: what it is a version of, for all phones (see `group_of`)."""

    uid: UUID
    group: str
    after: UUID | None
    phone: UUID
    placed_at: datetime


@dataclass(frozen=True)
class Standing:
    """Where a writing stands: when it counts as made, which of its group shows, which stand beside it.

    `begun`: when the thing was first put down, of which this is an edit; an edit of the next day moves no work to it.
    """

    effective: datetime
    begun: datetime
    shows: UUID
    beside: tuple[UUID, ...]


def group_of(kind: str, record: UUID, cow_id: int | None) -> str:
    """Writings of one cow are versions of one thing whichever phone began it; other things go by their record."""
    return f"{kind} {record if cow_id is None else cow_id}"


def merge(writings: Iterable[PlacedWriting]) -> dict[UUID, Standing]:
    """The standing of each writing, by uid."""
    groups: dict[str, list[PlacedWriting]] = {}
    for writing in writings:
        groups.setdefault(writing.group, []).append(writing)
    return {uid: standing for group in groups.values() for uid, standing in _stand(group).items()}


def _stand(group: list[PlacedWriting]) -> dict[UUID, Standing]:
    known = {writing.uid: writing for writing in group}
    lines = {writing.uid: _line(writing, known) for writing in group}
    effective = {uid: _effective(line) for uid, line in lines.items()}
    shows = max(known, key=lambda uid: (effective[uid], uid))
    before = {uid: {earlier.uid for earlier in line} for uid, line in lines.items()}
    return {
        writing.uid: Standing(
            effective[writing.uid], lines[writing.uid][-1].placed_at, shows, _beside(writing, group, before)
        )
        for writing in group
    }


def _line(writing: PlacedWriting, known: dict[UUID, PlacedWriting]) -> list[PlacedWriting]:
    """The writing and those it was edited from, newest first. Edits that go round in a ring count as unconnected."""
    line, seen = [writing], {writing.uid}
    while (earlier := known.get(line[-1].after) if line[-1].after else None) is not None:
        if earlier.uid in seen:
            return [writing]
        line.append(earlier)
        seen.add(earlier.uid)
    return line


def _effective(line: list[PlacedWriting]) -> datetime:
    effective = line[-1].placed_at
    for writing in reversed(line[:-1]):
        effective = max(writing.placed_at, effective + A_MOMENT)
    return effective


def _beside(
    writing: PlacedWriting, group: Collection[PlacedWriting], before: dict[UUID, set[UUID]]
) -> tuple[UUID, ...]:
    return tuple(
        sorted(
            other.uid
            for other in group
            if other.phone != writing.phone
            and other.uid not in before[writing.uid]
            and writing.uid not in before[other.uid]
        )
    )
