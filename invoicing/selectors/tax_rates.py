"""The tax rates of a business for its page."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from invoicing.models import TaxRate
from invoicing.selectors.billed_on import rate_is_billed_on
from invoicing.selectors.period_lock import locked_until
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class ShownRate:
    """A rate, the day before the next of its code begins, and why it cannot be mended ("" where it can)."""

    row: TaxRate
    last_day: date | None
    stays: str


def shown_rates(scope: Scope) -> list[ShownRate]:
    """By code, the newest first."""
    rows = list(TaxRate.objects.within(scope).order_by("code", "-valid_from"))
    closed = locked_until(scope)
    return [ShownRate(row, _last_day(row, rows), _why_it_stays(row, closed)) for row in rows]


def _last_day(row: TaxRate, rows: Sequence[TaxRate]) -> date | None:
    later = [
        other.valid_from for other in rows if other.code == row.code and other.valid_from > row.valid_from
    ]
    return min(later) - timedelta(days=1) if later else None


def _why_it_stays(row: TaxRate, closed: date | None) -> str:
    if closed is not None and row.valid_from <= closed:
        return "it begins in a closed period"
    return "work was billed at it" if rate_is_billed_on(row) else ""
