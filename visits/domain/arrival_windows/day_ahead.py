"""A van's day as it is walked through. All times are minutes after one and the same zero hour."""

from dataclasses import dataclass

from visits.domain.visit_lengths.spread_shape import NORMAL_SHAPE, SpreadShape

Span = tuple[float, float]


@dataclass(frozen=True)
class Spread:
    """How lengths, drives and leaving spread; learned from a business's own days (`learn_drives.py`), else usual.

    `lengths` and `drives` are shapes; a drive takes its minutes times exp(`drive_spread` x error). `day_share` is
    the share of the length's variance that the visits of one day have in common (weather, a helper, how one feels).
    The van leaves `leave_late` +- `leave_spread` minutes after the planned minute. Without history: drives 15 %,
    leaving 4 +- 6 min, a meal a fifth longer or shorter, a fifth of the length in common (common practice, no source).
    """

    lengths: SpreadShape = NORMAL_SHAPE
    day_share: float = 0.2
    drive_ratio: float = 1.0
    drive_spread: float = 0.15
    leave_late: float = 4.0
    leave_spread: float = 6.0
    meal_spread: float = 0.2


@dataclass(frozen=True)
class DayStop:
    """One farm: the drive to it, the expected length and its standard deviation, when work may be done there.

    Work begins in the first of `windows` that is not over, never before `not_before` (an hour that was promised).
    `done_by` is when the cows are wanted elsewhere; `begun` and `finished` are what really happened so far.
    """

    drive: float
    minutes: float
    spread: float
    windows: tuple[Span, ...] = ()
    not_before: float | None = None
    done_by: float | None = None
    begun: float | None = None
    finished: float | None = None


@dataclass(frozen=True)
class Meal:
    """So many minutes, begun between `earliest` and `latest`.

    `before` is the stop (from 0; their number: the way home) before which the plan has room for it, None without such
    a plan.
    """

    minutes: float
    earliest: float
    latest: float
    before: int | None = None


@dataclass(frozen=True)
class DayAhead:
    """A van's day: when it is to leave, its stops in order, the drive home, the meal, and how late it is by now."""

    leave: float
    stops: tuple[DayStop, ...]
    drive_home: float = 0.0
    meal: Meal | None = None
    now: float | None = None


@dataclass(frozen=True)
class Walked:
    """One drawn day: minutes of arriving, beginning and finishing at each stop, and of being home."""

    arrive: tuple[float, ...]
    begin: tuple[float, ...]
    finish: tuple[float, ...]
    home: float
