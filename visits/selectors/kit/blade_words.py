"""What is said of the edge on a blade, and of what to grind before which day."""

from collections.abc import Sequence
from datetime import date, timedelta

from trimops.paper.days import DAYS, day_short
from trimops.paper.figures import counted
from visits.domain.kit.blade_kinds import BladeFault, BladeState
from visits.models import Blade
from visits.selectors.kit.blade_grinding import GrindingDay, JobGrinding, VanGrinding
from visits.selectors.kit.van_edges import BladeEdge

Mark = tuple[str, str]


def edge_words(edge: BladeEdge) -> str:
    """ "17 cows, counted on for 9 more" """
    outlook = edge.outlook
    cows = counted(edge.edge.cows, "cow") if edge.edge.cows else "no cow yet"
    if outlook.is_dull:
        return f"dull after {cows}"
    if edge.edge.is_over:
        return f"after {cows}" if edge.edge.cows else ""
    if not edge.is_counted:
        return cows
    if outlook.is_beyond:
        return f"{cows}: " + (
            "past what it is counted on for" if edge.life.is_practice else "no edge here has cut more"
        )
    if outlook.sure:
        more = " more" if edge.edge.cows else ""
        return f"{cows}, counted on for {outlook.sure}{more}"
    return f"{cows}: may drag at any cow now"


def interval_words(edge: BladeEdge) -> str:
    """The doubt: "8 of 10 such edges go dull between 9 and 42 more cows"; or on what it rests without one."""
    outlook = edge.outlook
    if outlook.is_dull or edge.edge.is_over or outlook.is_beyond or not edge.is_counted:
        return ""
    if edge.life.is_practice:
        return f"Too few edges of this kind went dull yet: counted on for your own figure, {edge.life.reach} cows."
    return f"8 of 10 such edges go dull after {outlook.low} to {outlook.high} more cows, half by {outlook.middle}."


def state_mark(edge: BladeEdge) -> Mark:
    """Look and word of the mark beside a blade."""
    state, fault = BladeState(edge.blade.state), edge.blade.fault
    if state is BladeState.OUT_OF_USE:
        why = BladeFault(fault) if fault else None
        is_danger = why is not None and why.is_danger
        return "urgent" if is_danger else "plain", f"Out of use{f': {why.label.lower()}' if why else ''}"
    if not state.may_cut:
        return "plain", state.label
    if edge.outlook.is_dull:
        return "due", "Dull"
    if edge.is_counted and edge.edge.cows and not edge.outlook.sure:
        return "due", "Near its end"
    word = "Sharp" if edge.is_counted else state.label
    return "done", word if state is BladeState.IN_USE else state.label


def van_answer(grinding: VanGrinding, edges: Sequence[BladeEdge], today: date) -> str:
    """The title: what to grind before which day, or that nothing is to be ground."""
    first = grinding.first_grinding
    short = _short_day(grinding)
    if short is not None:
        job, day = short
        needed = f"take {day.needed}" if day.needed else "more than a dozen would do"
        return (
            f"{counted(day.plan.cows, 'cow')} {_on(day.day, today)} are more than "
            f"{counted(len(job.edges), 'sharp knife', 'sharp knives')} last: {needed}"
        )
    if first is not None:
        blades = grinding.to_grind(first)
        return f"Grind {_named(blades)} before {day_name(first, today)}"
    if grinding.first_day is not None:
        carry = max(len(day.carry) for job in grinding.jobs for day in job.days)
        return f"Nothing to grind this week: carry {counted(carry, 'sharp knife', 'sharp knives')}"
    dull = sum(edge.outlook.is_dull for edge in edges if edge.may_cut)
    sharp = sum(not edge.outlook.is_dull for edge in edges if edge.may_cut)
    return f"{counted(sharp, 'edge')} of {grinding.van} {'cuts' if sharp == 1 else 'cut'}, {dull} dull"


def of_100(chance: float) -> str:
    """A chance from 0 to 1, in so many of 100: "under 1", "17", "over 99"."""
    if 0 < chance < 0.01:
        return "under 1"
    return "over 99" if 0.99 < chance < 1 else f"{100 * chance:.0f}"


def day_name(day: date, today: date) -> str:
    """ "today", "tomorrow", "Thursday" within the week, else "Thu 10 Dec"."""
    if day - today < timedelta(days=2):
        return "today" if day == today else "tomorrow"
    return DAYS[day.weekday()] if day - today < timedelta(days=7) else day_short(day)


def _on(day: date, today: date) -> str:
    name = day_name(day, today)
    return name if name in ("today", "tomorrow") else f"on {name}"


def _short_day(grinding: VanGrinding) -> tuple[JobGrinding, GrindingDay] | None:
    """The first day that even freshly ground knives do not last, unless something is to be ground before it."""
    days = [(job, day) for job in grinding.jobs for day in job.days if not day.plan.is_held]
    first = min(days, key=lambda pair: pair[1].day, default=None)
    if first is None or (grinding.first_grinding and grinding.first_grinding < first[1].day):
        return None
    return first


def _named(blades: Sequence[Blade]) -> str:
    names = " and ".join(f"“{blade.name}”" for blade in blades)
    return names if len(blades) < 3 else counted(len(blades), "blade")
