"""The rule in a stop's way and the price of a place, in words a trimmer would use."""

from collections.abc import Collection, Sequence

from visits.domain.planning.board import Board
from visits.domain.planning.measures import PER_MINUTE
from visits.domain.planning.moves.price_moves import Price
from visits.domain.planning.moves.why_not import Rule, WhyNot

NOTHING = "No more time, road or money."


def say_why_not(why: WhyNot, board: Board, names: Sequence[str], kept: Collection[int] = ()) -> str:
    """One sentence. `names` are the farms by index of job; `kept` the jobs locked to their van and day."""
    name = names[why.job] if why.job is not None else ""
    beside = names[why.beside] if why.beside is not None else ""
    minutes = _long(-(-why.over // PER_MINUTE))
    if why.job in kept and why.rule in (Rule.CREW, Rule.NO_HOURS):
        return f"{name} is locked to its van and day: unlock it first."
    if why.rule is Rule.HYGIENE:
        jobs = board.problem.jobs
        levels = (jobs[why.job or 0].hygiene, jobs[why.beside or 0].hygiene)
        return f"{name} (hygiene {levels[0]}) must not come after {beside} (hygiene {levels[1]})."
    return {
        Rule.BEGUN: "This day has begun.",
        Rule.LEFT_BEHIND: "The day it leaves cannot be driven without it: the road by this farm is the quicker one.",
        Rule.CREW: f"{name} is kept for another van.",
        Rule.HELD: f"{name} keeps its hour on another day.",
        Rule.NO_HOURS: f"Nobody can work at {name} within the hours of this day.",
        Rule.COWS: f"{why.over} {'cow' if why.over == 1 else 'cows'} over the limit of the day.",
        Rule.TOO_LATE: f"{name} would begin {minutes} too late for its hours.",
        Rule.HOME_LATE: f"The van would be home {minutes} after its day ends.",
        Rule.LONG_DAY: f"The day would be {minutes} over its limit.",
        Rule.MEAL: "No gap would be left for the meal.",
        Rule.MEAL_OR_LONG_DAY: "No gap would be left for the meal within the limit of the day.",
    }[why.rule]


def say_price(price: Price, money: str) -> str:
    """ "12 min more, 8.4 km less, £4.20 more"; `money` is the amount without its sign, "" where it is nothing."""
    parts = []
    if minutes := round(price.work / PER_MINUTE):
        parts.append(f"{_long(abs(minutes))} {_more(minutes)}")
    if tenths := round(price.metres / 100):
        parts.append(f"{abs(tenths) / 10:,.1f} km {_more(tenths)}")
    if money:
        parts.append(f"{money} {_more(price.money)}")
    return ", ".join(parts) or NOTHING


def _more(figure: float) -> str:
    return "more" if figure > 0 else "less"


def _long(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"
