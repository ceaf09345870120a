"""The tax rates of a business to choose from."""

from invoicing.models import TaxRate
from trimops.kernel.scope import Scope


def tax_choices(scope: Scope) -> list[tuple[str, str]]:
    """(code, words) of each code by its newest rate, the highest first."""
    rows = TaxRate.objects.within(scope).order_by("valid_from")
    newest = {row.code: row for row in rows}
    in_order = sorted(newest.values(), key=lambda row: (-row.percent, row.code))
    return [(row.code, rate_words(row)) for row in in_order]


def rate_words(rate: TaxRate) -> str:
    """Standard, 20 %."""
    return f"{rate.name or rate.code}, {rate.percent.normalize():f} %"
