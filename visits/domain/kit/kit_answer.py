"""What the page of the kit answers in its title: what runs out first, and what is to be ordered or counted."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from trimops.paper.days import DAYS, day_plain
from trimops.paper.figures import counted

WEEK = timedelta(days=7)


@dataclass(frozen=True)
class ItemOutlook:
    """`runs_out`: the day by which running out is more likely than not, None beyond the days foreseen. `order_now`: an
    order is due and none is on its way. `below`: the places where the ledger says less than nothing. Not `is_told`:
    nobody has said yet what lies anywhere, so that nothing else is known of it."""

    name: str
    runs_out: date | None = None
    order_now: bool = False
    below: tuple[str, ...] = ()
    is_told: bool = True


def kit_answer(items: Sequence[ItemOutlook], today: date, last: date) -> str:
    """One sentence without its full stop. `last` is the last day that is foreseen.

    A name has no verb: whether it is one glue or two gloves nobody knows here.
    """
    told = [item for item in items if item.is_told]
    due = [item for item in told if item.order_now]
    gone = sorted((item for item in told if item.runs_out), key=_day_of)
    if not told:
        return "Nothing is counted yet: say what lies where"
    if gone and _day_of(gone[0]) <= today:
        return _gone_words(gone, due, today)
    if due:
        return _order_words(due, today)
    if below := [item for item in told if item.below]:
        return _below_words(below)
    if len(told) < len(items):
        return _untold_words([item for item in items if not item.is_told])
    if gone and _day_of(gone[0]) < today + WEEK:
        return f"{gone[0].name}: out {on_day(_day_of(gone[0]), today)}; nothing to order today"
    if gone:
        return f"Everything lasts until {day_words(_day_of(gone[0]) - timedelta(days=1), today)}"
    return f"Everything lasts beyond {day_words(last, today)}"


def _gone_words(gone: Sequence[ItemOutlook], due: Sequence[ItemOutlook], today: date) -> str:
    out = [item for item in gone if _day_of(item) <= today]
    words = f"{out[0].name}: used up" if len(out) == 1 else f"{counted(len(out), 'consumable')} are used up"
    return f"{words}{_more(due, out)}"


def _order_words(due: Sequence[ItemOutlook], today: date) -> str:
    first, *others = sorted(due, key=lambda item: (item.runs_out is None, item.runs_out or today))
    if first.runs_out is None:
        return f"Order {_lower(first.name)}{f' and {len(others)} more' if others else ''}"
    words = f"{first.name}: out {on_day(first.runs_out, today)}"
    return f"{words}; {len(others)} more to order" if others else f"{words}, order it"


def _more(due: Sequence[ItemOutlook], out: Sequence[ItemOutlook]) -> str:
    others = [item for item in due if item not in out]
    if others:
        return f"; {len(others)} more to order"
    return ", order it" if len(out) == 1 and out[0] in due else ""


def _below_words(below: Sequence[ItemOutlook]) -> str:
    if len(below) == 1:
        place = below[0].below[0] if len(below[0].below) == 1 else "two places or more"
        return f"{below[0].name}: below nought in {place}, count it"
    return f"{counted(len(below), 'consumable')} stand below nought: count them"


def _untold_words(untold: Sequence[ItemOutlook]) -> str:
    if len(untold) == 1:
        return f"{untold[0].name}: never bought or counted, say what lies there"
    return f"{counted(len(untold), 'consumable')} were never bought or counted: say what lies there"


def _day_of(item: ItemOutlook) -> date:
    return item.runs_out or date.max


def _lower(name: str) -> str:
    return name[:1].lower() + name[1:]


def day_words(day: date, today: date) -> str:
    """ "today", "tomorrow", "Thursday" within the coming six days, else "14 December"; the year where it is another."""
    if day == today:
        return "today"
    if day == today + timedelta(days=1):
        return "tomorrow"
    if today < day < today + WEEK:
        return DAYS[day.weekday()]
    words = day_plain(day)
    return words.rsplit(" ", 1)[0] if day.year == today.year else words


def on_day(day: date, today: date) -> str:
    """The same after a verb: "today", "on Thursday", "on 14 December"."""
    words = day_words(day, today)
    return words if words in ("today", "tomorrow") else f"on {words}"
