"""What a change to the plan in force costs: a business's own figure, in minor units of its money.

It is the stated price by which planning again weighs a change against what it saves: a visit that goes to another
day or another van costs `visit`; a farm that has been told an hour and is seen more than `minutes` away from it (or
not at all) costs `told_hour` on top. An hour nobody has been told moves freely within its day and van.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from visits.domain.planning.replan.plan_in_force import InForce

Placed = Mapping[str, tuple[str, datetime]]
"""Job -> (shift, start) in a new plan; what it leaves out is absent."""


@dataclass(frozen=True)
class PriceOfChange:
    """Money of the minor unit, and the minutes by which a told hour may slip without a word."""

    visit: float = 1000
    told_hour: float = 600
    minutes: float = 30

    @property
    def slack(self) -> timedelta:
        """How far a told hour may move."""
        return timedelta(minutes=self.minutes)


def price_paid(in_force: Sequence[InForce], placed: Placed, price: PriceOfChange) -> float:
    """The price of all changes from the plan in force to the new one."""
    return sum(price_of_one(entry, placed.get(entry.job), price) for entry in in_force)


def price_of_one(entry: InForce, now: tuple[str, datetime] | None, price: PriceOfChange) -> float:
    """The price of one visit's change; `now` is None where the new plan leaves it out."""
    moved = now is None or now[0] != entry.shift
    hour = entry.known_hour
    broken = hour is not None and (now is None or abs(now[1] - hour) > price.slack)
    return price.visit * moved + price.told_hour * broken
