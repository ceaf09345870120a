"""Weeks of a drawn history told beforehand: from what was known on the Monday morning, trained on all days before it.

Use is counted in pieces, so a quantile's own chance is more than was asked for, and the plain share of weeks within the
80 % quantile is too high even of a perfect forecast. What is held to the bar is therefore the share by the probability
integral transform without drawing (Czado, Gneiting and Held 2009, Biometrics 65:1254; from memory): a week counts with
the part of its cell that lies within the chance, 0 to 1. Of a perfect forecast its mean is the chance itself. The plain
share stands beside it with what it should be: the quantile's own chance, in the mean.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from statistics import mean

from tests.bench.visits.drawn_months import TODAY
from tests.bench.visits.drawn_uses import DrawnUses
from visits.domain.kit.forecast.first_guess import first_guess
from visits.domain.kit.forecast.learn_use import learn_use
from visits.domain.kit.forecast.past_work import past_work
from visits.domain.kit.forecast.spread import Spread
from visits.domain.kit.forecast.use_ahead import use_ahead

WEEK = timedelta(days=6)
LEVELS = (0.5, 0.8, 0.95)


@dataclass(frozen=True)
class ToldWeek:
    """One consumable in one week: what was foreseen and what was used."""

    item: str
    monday: date
    foreseen: Spread
    used: Decimal

    def within(self, chance: float) -> float:
        """The part of the week's cell that lies within `chance`."""
        over = self.foreseen.chance_above(self.used)
        cell = self.foreseen.chance_above(self.used - self.foreseen.step / 2) - over
        below = 1 - over - cell
        if cell <= 0:
            return float(below <= chance)
        return min(max((chance - below) / cell, 0.0), 1.0)

    def is_at_most(self, chance: float) -> bool:
        return self.used <= self.foreseen.quantile(chance)

    def own_chance(self, chance: float) -> float:
        """What `is_at_most` should be in the mean."""
        return 1 - self.foreseen.chance_above(self.foreseen.quantile(chance))


def tell_weeks(
    drawn: DrawnUses, weeks: int = 26, names: Sequence[str] = (), *, last: timedelta = WEEK
) -> Iterator[ToldWeek]:
    """The last so many Mondays; of these consumables only, where some are named. `last`: the days told after it."""
    for number in range(weeks, 0, -1):
        monday = TODAY - timedelta(days=7 * number)
        if monday + last >= TODAY:
            continue
        booked = drawn.booked_at(monday, monday + last)
        work = past_work(drawn.uses_before(monday, 0))
        for at, item in enumerate(drawn.items):
            if names and item.name not in names:
                continue
            model = learn_use(drawn.uses_before(monday, at), first_guess(item.recipe), work)
            foreseen = use_ahead(model, booked, monday, monday + last).until(monday + last)
            yield ToldWeek(item.name, monday, foreseen, drawn.used_between(monday, monday + last, at))


def held(weeks: Sequence[ToldWeek], chance: float) -> float:
    """The share of weeks within the quantile, cells shared out; of a perfect forecast `chance` in the mean."""
    return mean(week.within(chance) for week in weeks)


def plain(weeks: Sequence[ToldWeek], chance: float) -> float:
    return mean(week.is_at_most(chance) for week in weeks)


def plain_expected(weeks: Sequence[ToldWeek], chance: float) -> float:
    return mean(week.own_chance(chance) for week in weeks)
