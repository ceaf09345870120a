"""A year of the demo's history lived through again, evening by evening, with the orders that the forecast advises.

Bars (issue 7), at 95 % service: on at most 5 of 100 working days anything that was needed was short (the strict
reading; the share of short item-days is printed beside it), and the mean stock, in money, is at most two thirds of what
keeping the highest ever used would hold. That rule of thumb: in stock or coming is, every evening, the most that was
ever used in lead and review days on end until then; same packs, same lead times, same stock on the first day, three
months before the year that is measured. Stock is that of each evening, weekends too, in store and vans together, at
what a unit costs.

Printed besides: the same rule looked at once a week (mean of the five weekdays), the same for lead days and one day
more (what a rule looked at every evening needs at least), and the least that whole packs allow somebody who knows the
future. Whoever holds the advice against those sees how much of the stock the packs are.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from statistics import mean

from tests.bench.visits.drawn_uses import draw_uses
from tests.bench.visits.lived_year import FIGURES, LivedItem, Year

SEEDS = (1, 2, 3)
MOST_SHORT, MOST_STOCK = 0.05, 2 / 3
REVIEW = round(FIGURES.review_days)
WEEKDAYS = range(5)


@dataclass(frozen=True)
class Lived:
    """A year, or a part of one, lived by the advice and by the other ways; `week`: by weekday of the look."""

    work_days: int
    advice: Sequence[LivedItem]
    highest: Sequence[LivedItem]
    week: Sequence[Sequence[LivedItem]] = field(default=())
    tight: Sequence[LivedItem] = field(default=())
    least: Sequence[LivedItem] = field(default=())

    @property
    def short_days(self) -> float:
        """The share of working days on which anything was short."""
        return len(set().union(*(item.short for item in self.advice))) / self.work_days

    @property
    def short_item_days(self) -> float:
        return sum(len(item.short) for item in self.advice) / self.work_days / len(self.advice)


def main() -> None:
    years = []
    for seed in SEEDS:
        years.append(live(Year(draw_uses(seed))))
        print(f"seed {seed}")
        tell(years[-1])
    print(f"all: short on {short_days(years):.1%} of working days, stock {share(years):.3f} of the rule's")
    check(years)


def live(year: Year) -> Lived:
    """All ways of ordering."""
    return Lived(
        work_days=len(year.work_days),
        advice=year.follow(),
        highest=year.keep_the_highest(REVIEW),
        week=[year.keep_the_highest(REVIEW, frozenset({weekday})) for weekday in WEEKDAYS],
        tight=year.keep_the_highest(1),
        least=year.know_the_future(),
    )


def tell(lived: Lived) -> None:
    """One line a consumable, then the money."""
    print(f"{'mean stock':26}  advice  highest   share  weekly  lead+1   least   short days  orders")
    for at, item in enumerate(lived.advice):
        weekly = mean(week[at].mean_stock for week in lived.week)
        others = (weekly, lived.tight[at].mean_stock, lived.least[at].mean_stock)
        held, highest = item.mean_stock, lived.highest[at].mean_stock
        print(
            f"{item.item.name:26} {held:7.1f} {highest:8.1f} {held / highest:7.2f} "
            + " ".join(f"{each:7.1f}" for each in others)
            + f" {len(item.short):12} {item.lived.orders:7}"
        )
    weekly_money = mean(money(week) for week in lived.week)
    print(
        f"{'money':26} {money(lived.advice):7.0f} {money(lived.highest):8.0f} {share([lived]):7.3f} {weekly_money:7.0f}"
        f" {money(lived.tight):7.0f} {money(lived.least):7.0f}"
    )
    print(
        f"anything short on {lived.short_days:.1%} of working days, {lived.short_item_days:.2%} of item-days"
    )


def money(items: Sequence[LivedItem]) -> float:
    return sum(item.money for item in items)


def share(years: Sequence[Lived]) -> float:
    """What the advice holds of what the rule of thumb does."""
    return sum(money(year.advice) for year in years) / sum(money(year.highest) for year in years)


def short_days(years: Sequence[Lived]) -> float:
    return mean(year.short_days for year in years)


def check(years: Sequence[Lived]) -> None:
    """AssertionError names the bar that is missed."""
    if short_days(years) > MOST_SHORT:
        raise AssertionError(f"anything short on {short_days(years):.1%} of working days, not at most 5 %")
    if share(years) > MOST_STOCK:
        raise AssertionError(f"the mean stock is {share(years):.3f} of the rule's, not at most two thirds")


if __name__ == "__main__":
    main()
