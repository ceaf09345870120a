"""Which cows to bring to the crush, in order of need, cut at the expected count.

Order after the AHDB article on the trim list: newly lame first, then blocks and re-checks, then the look before
drying off, 3 to 10 days ahead and not on the day itself. Cows asked for come after what is due; the rest of the
order is common practice, no source. The days of each rule are the farm's (`draft_rules`).
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from enum import IntEnum

from trimops.paper.days import day_short_year
from visits.domain.draft_rules import DraftRules
from visits.domain.mobility import MobilityScale, Urgency, urgency_of

TRIMMED_SINCE_CALVING = 30
"""A cow trimmed so many days after calving or later is not wanted again for her days in milk (common practice)."""
_PRESSES = {Urgency.SAME_DAY: 0, Urgency.SOON: 1, Urgency.NONE: 2}


class Need(IntEnum):
    """Why a cow is wanted, the most pressing first."""

    LAME = 1
    DUE = 2
    ASKED = 3
    DRY_OFF = 4
    HEIFER = 5
    IN_MILK = 6
    LONG_AGO = 7

    @property
    def label(self) -> str:
        return _LABELS[self]

    @property
    def presses(self) -> bool:
        """Comes even near calving or on the day of drying off, with a warning."""
        return self <= Need.ASKED

    @property
    def is_corrective(self) -> bool:
        """Takes the time of a lame or re-checked cow."""
        return self <= Need.DUE


_LABELS = {
    Need.LAME: "Lame now",
    Need.DUE: "Blocks and re-checks",
    Need.ASKED: "Asked for",
    Need.DRY_OFF: "Before drying off",
    Need.HEIFER: "Heifers before calving",
    Need.IN_MILK: "In mid-lactation",
    Need.LONG_AGO: "Longest since the last trim",
}


@dataclass(frozen=True)
class DraftCandidate:
    """What is known of a cow, as far as it bears on whether she is wanted at the crush.

    `score_words` tell her last score, `due_words` what is due on her and `due_until` its last day, `asked_words` what
    was said when she was asked for (`is_asked`) or added. `due_elsewhere`: another visit is to see to what is due.
    `known_since`: the first day she is known to have been here.
    """

    cow_id: int
    number: str
    scale: MobilityScale | None = None
    score: int | None = None
    score_words: str = ""
    due_words: tuple[str, ...] = ()
    due_until: date | None = None
    due_elsewhere: bool = False
    is_asked: bool = False
    asked_words: tuple[str, ...] = ()
    is_heifer: bool = False
    calved_on: date | None = None
    calving_due: date | None = None
    dry_off_due: date | None = None
    last_trim: date | None = None
    known_since: date | None = None

    @property
    def urgency(self) -> Urgency:
        """How soon she is to be looked at, by her own score."""
        if self.scale is None or self.score is None:
            return Urgency.NONE
        return urgency_of(self.scale, self.score)

    @property
    def is_lame(self) -> bool:
        return self.urgency is not Urgency.NONE


@dataclass(frozen=True)
class DraftLine:
    """One cow of the list: why she is wanted, the most pressing need first, and what to mind."""

    cow: DraftCandidate
    need: Need
    reasons: tuple[str, ...]
    warning: str = ""

    @property
    def cow_id(self) -> int:
        return self.cow.cow_id

    @property
    def number(self) -> str:
        return self.cow.number

    @property
    def why(self) -> str:
        return "; ".join(self.reasons)

    @property
    def is_promised(self) -> bool:
        """Somebody counts on this visit for her: she comes even when the list is longer than expected."""
        return self.cow.is_asked or (bool(self.cow.due_words) and not self.cow.due_elsewhere)


@dataclass(frozen=True)
class DraftOrder:
    """The cows to present, and those left for next time."""

    present: tuple[DraftLine, ...]
    left_for_next: tuple[DraftLine, ...]

    def has(self, cow_id: int) -> bool:
        """Whether the cow is to be presented."""
        return any(line.cow_id == cow_id for line in self.present)

    @property
    def corrective(self) -> int:
        """How many of the cows to present are lame or re-checked."""
        return sum(line.need.is_corrective for line in self.present)


def draft_order(
    cows: Iterable[DraftCandidate], visit_day: date, count: int, rules: DraftRules | None = None
) -> DraftOrder:
    """The `count` cows with the greatest need on that day; the others with a reason are left for next time.

    The places go first to what was promised (asked for, added, a block or re-check that no other visit is to see to),
    even when there are more of these than places, and then to the greatest need, lame cows first. Cows of one need come
    very lame first, then due longest, then longest without a trim. A cow with a warning comes only for what presses;
    routine waits until after she has calved or been dried off.
    """
    using = rules or DraftRules()
    lines = sorted((line for cow in cows if (line := _line(cow, visit_day, using))), key=_place)
    wanted = [line for line in lines if not line.warning or line.need.presses]
    promised = {line.cow_id for line in wanted if line.is_promised}
    places = max(0, count - len(promised))
    others = [line.cow_id for line in wanted if line.cow_id not in promised][:places]
    present = [line for line in wanted if line.cow_id in promised.union(others)]
    coming = {line.cow_id for line in present}
    return DraftOrder(tuple(present), tuple(line for line in lines if line.cow_id not in coming))


def _place(line: DraftLine) -> tuple[int, int, date, date, str, int]:
    cow = line.cow
    return (
        line.need,
        _PRESSES[cow.urgency],
        cow.due_until or date.max,
        cow.last_trim or cow.known_since or date.min,
        cow.number.zfill(20),
        cow.cow_id,
    )


def _line(cow: DraftCandidate, day: date, rules: DraftRules) -> DraftLine | None:
    needs = _needs(cow, day, rules)
    if not needs:
        return None
    scored = (f"lame, {cow.score_words}" if cow.is_lame else cow.score_words,) if cow.score_words else ()
    # because: of a cow who comes anyway it need not be said that her last trim is long ago
    silent = Need.LONG_AGO if needs[0][0].presses else None
    routine = tuple(words for need, words in needs if not need.presses and need is not silent)
    due = tuple(words for words in cow.due_words if not any(words in said for said in cow.asked_words))
    reasons = (*scored, *cow.asked_words, *due, *routine)
    return DraftLine(cow, needs[0][0], reasons, _warning(cow, day, rules))


def _needs(cow: DraftCandidate, day: date, rules: DraftRules) -> Sequence[tuple[Need, str]]:
    pressing = [
        (Need.LAME, cow.is_lame),
        (Need.DUE, bool(cow.due_words)),
        (Need.ASKED, cow.is_asked),
    ]
    routine = [
        (Need.DRY_OFF, _dry_off(cow, day, rules)),
        (Need.HEIFER, _heifer(cow, day, rules)),
        (Need.IN_MILK, _milk_days(cow, day, rules)),
        (Need.LONG_AGO, _long_ago(cow, day, rules)),
    ]
    return [(need, "") for need, has in pressing if has] + [(need, words) for need, words in routine if words]


def _dry_off(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    ahead = _days(day, cow.dry_off_due)
    if not rules.use_dry_off or ahead is None or not rules.dry_off_from <= ahead <= rules.dry_off_to:
        return ""
    return f"dry-off in {_so_many(ahead)}"


def _heifer(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    ahead = _days(day, cow.calving_due)
    if not (rules.use_heifers and cow.is_heifer) or ahead is None:
        return ""
    return f"heifer, calves in {_so_many(ahead)}" if rules.heifer_from <= ahead <= rules.heifer_to else ""


def _milk_days(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    since = _days(cow.calved_on, day)
    if not rules.use_milk_days or since is None or not rules.milk_from <= since <= rules.milk_to:
        return ""
    trimmed = _days(cow.calved_on, cow.last_trim)
    return f"{_so_many(since)} in milk" if trimmed is None or trimmed < TRIMMED_SINCE_CALVING else ""


def _long_ago(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    """A cow without a trim on file counts from the day since when she is known here; unknown, she is not wanted."""
    start = cow.last_trim or (None if cow.is_heifer else cow.known_since)
    since = _days(start, day)
    if not rules.use_long_ago or start is None or since is None or since < rules.trim_again_after:
        return ""
    return (
        f"last trim {_so_many(since)} ago"
        if cow.last_trim
        else f"no trim known since {day_short_year(start)}"
    )


def _warning(cow: DraftCandidate, day: date, rules: DraftRules) -> str:
    calving, dry_off = _days(day, cow.calving_due), _days(day, cow.dry_off_due)
    if calving is not None and 0 <= calving < rules.calving_warning:
        return f"calves in {_so_many(calving)}: ask the vet first"
    return "dry-off is that day: not on the same day" if dry_off == 0 else ""


def _days(start: date | None, end: date | None) -> int | None:
    return None if start is None or end is None else (end - start).days


def _so_many(days: int) -> str:
    return "1 day" if days == 1 else f"{days} days"
