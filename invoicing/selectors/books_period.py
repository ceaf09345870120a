"""Which period of the books is asked for."""

from datetime import date

from invoicing.domain.tax_periods import Period, PeriodKind, free_period, period_around
from invoicing.selectors.money_rules import money_rules
from trimops.kernel.scope import Scope


def books_period(scope: Scope, kind: PeriodKind, first: date, last: date | None = None) -> Period:
    """The period of that kind around `first`, counted from the month in which the business's books begin.

    Of the free kind it runs to `last`, which may not be before `first` (ValueError).
    """
    if kind is PeriodKind.FREE:
        return free_period(first, last or first)
    return period_around(kind, first, money_rules(scope).books_begin_month)
