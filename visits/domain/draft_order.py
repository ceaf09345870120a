"""Which cows to bring to the crush, in order of need, cut at the expected count.

Order after the AHDB article on the trim list (newly lame first, then blocks and re-checks, then the look
before drying off, 3 to 10 days ahead and not on the day itself); 60 to 100 days in milk after Griffiths 2018;
heifers before calving: common practice, no source. Sources disagree on the trim in mid-lactation, so each
rule can be switched off.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

LAST_PRESSING_RANK = 2
"""Ranks 1 and 2 (lame, re-check) press even near calving or on the day of drying off."""


@dataclass(frozen=True)
class DraftCandidate:
    """What is known of a cow, as far as it bears on whether she is wanted at the crush."""

    cow_id: int
    number: str
    lame_words: str = ""
    recheck_words: str = ""
    is_heifer: bool = False
    calved_on: date | None = None
    calving_due: date | None = None
    dry_off_due: date | None = None
    last_trim: date | None = None


@dataclass(frozen=True)
class DraftRules:
    """Which reasons the farm goes by, and their days."""

    dry_off_from: int = 3
    dry_off_to: int = 10
    milk_from: int = 60
    milk_to: int = 100
    heifer_from: int = 29
    heifer_to: int = 60
    trim_again_after: int = 150
    calving_warning: int = 28
    use_milk_days: bool = True
    use_heifers: bool = True


@dataclass(frozen=True)
class DraftLine:
    """One cow of the list: why she is wanted, and what to mind."""

    cow_id: int
    number: str
    why: str
    warning: str
    rank: int


@dataclass(frozen=True)
class DraftOrder:
    """The cows to present, and those left for next time."""

    present: tuple[DraftLine, ...]
    left_for_next: tuple[DraftLine, ...]


def draft_order(
    cows: Sequence[DraftCandidate], visit_day: date, count: int, rules: DraftRules | None = None
) -> DraftOrder:
    """The `count` cows with the greatest need on that day; the others with a reason are left for next time.

    Cows of one rank come longest without a trim first. A cow with a warning comes only for lameness or a re-check;
    routine waits until after she has calved or been dried off.
    """
    using = rules or DraftRules()
    ranked = [(line, _since_trim(cow)) for cow in cows if (line := _line(cow, visit_day, using)) is not None]
    ranked.sort(key=lambda item: (item[0].rank, item[1], item[0].number.zfill(12)))
    lines = [line for line, _ in ranked]
    wanted = [line for line in lines if not (line.warning and line.rank > LAST_PRESSING_RANK)]
    present = tuple(wanted[: max(0, count)])
    return DraftOrder(present, tuple(line for line in lines if line not in present))


def _since_trim(cow: DraftCandidate) -> date:
    return cow.last_trim or date.min


def _line(cow: DraftCandidate, day: date, rules: DraftRules) -> DraftLine | None:
    reasons = [(rank, words) for rank, words in _reasons(cow, day, rules) if words]
    if not reasons:
        return None
    return DraftLine(
        cow.cow_id,
        cow.number,
        "; ".join(words for _, words in reasons),
        _warning(cow, day, rules),
        reasons[0][0],
    )


def _reasons(cow: DraftCandidate, day: date, rules: DraftRules) -> list[tuple[int, str]]:
    return [
        (1, cow.lame_words),
        (2, cow.recheck_words),
        (3, _dry_off(cow, day, rules)),
        (4, _heifer(cow, day, rules)),
        (5, _milk_days(cow, day, rules)),
        (6, _long_ago(cow, day, rules)),
    ]


def _dry_off(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    ahead = _days(day, cow.dry_off_due)
    return (
        f"dry-off in {ahead} days"
        if ahead is not None and rules.dry_off_from <= ahead <= rules.dry_off_to
        else ""
    )


def _heifer(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    ahead = _days(day, cow.calving_due)
    wanted = cow.is_heifer and rules.use_heifers and ahead is not None
    return (
        f"heifer, calves in {ahead} days"
        if wanted and rules.heifer_from <= (ahead or 0) <= rules.heifer_to
        else ""
    )


def _milk_days(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    since = _days(cow.calved_on, day)
    wanted = rules.use_milk_days and since is not None and rules.milk_from <= since <= rules.milk_to
    trimmed = _days(cow.calved_on, cow.last_trim)
    return f"{since} days in milk" if wanted and (trimmed is None or trimmed < 30) else ""


def _long_ago(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    if cow.last_trim is None:
        return "" if cow.is_heifer else "no trim known"
    since = (day - cow.last_trim).days
    return f"last trim {since} days ago" if since >= rules.trim_again_after else ""


def _warning(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    calving, dry_off = _days(day, cow.calving_due), _days(day, cow.dry_off_due)
    if calving is not None and 0 <= calving < rules.calving_warning:
        return f"calves in {calving} days: ask the vet first"
    return "dry-off is that day: not on the same day" if dry_off == 0 else ""


def _days(start: date | None, end: date | None) -> int | None:
    return None if start is None or end is None else (end - start).days
