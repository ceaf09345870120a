"""The mail about a plan that was made of an evening: what it proposes, in plain words."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime

from trimops.paper.days import clock, day_long, day_short
from trimops.paper.figures import counted


@dataclass(frozen=True)
class ProposedVisit:
    """`start` is aware and in the business's zone."""

    start: datetime
    farm: str
    cows: int


@dataclass(frozen=True)
class ProposedDay:
    """One van's day; `visits` in the order of driving."""

    day: date
    van: str
    visits: Sequence[ProposedVisit]


@dataclass(frozen=True)
class LeftOutVisit:
    """`why` is a sentence."""

    farm: str
    cows: int
    due: date
    why: str


@dataclass(frozen=True)
class Proposal:
    """`address` is the page where it is looked at, taken or dropped."""

    monday: date
    days: Sequence[ProposedDay]
    left_out: Sequence[LeftOutVisit]
    address: str

    @property
    def visits(self) -> int:
        return sum(len(day.visits) for day in self.days)


def proposal_subject(proposal: Proposal) -> str:
    """ "Proposed plan for the week of Mon 7 Dec: 9 visits, 1 left out" """
    left = f", {len(proposal.left_out)} left out" if proposal.left_out else ""
    week = day_short(proposal.monday)
    return f"Proposed plan for the week of {week}: {counted(proposal.visits, 'visit')}{left}"


def proposal_text(proposal: Proposal) -> str:
    """The days, what is left out and why, and where to take it. Nothing in it is in the diary yet, and it says so."""
    lines = ["This is a proposal. Nothing is in the diary, and no farm is told, until you take it:"]
    lines += [proposal.address, ""]
    for day in proposal.days:
        cows = sum(visit.cows for visit in day.visits)
        lines.append(
            f"{day_long(day.day)}, {day.van}: {counted(len(day.visits), 'visit')}, {counted(cows, 'cow')}"
        )
        lines += [
            f"  {clock(visit.start)} {visit.farm}, {counted(visit.cows, 'cow')}" for visit in day.visits
        ]
        lines.append("")
    if proposal.left_out:
        lines.append("Left out:")
        lines += [
            f"  {left.farm}, {counted(left.cows, 'cow')}, due by {day_short(left.due)}. {left.why}".rstrip()
            for left in proposal.left_out
        ]
        lines.append("")
    return "\n".join(lines)
