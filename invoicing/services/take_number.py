"""The next number of a series is taken, under a lock that lasts until the invoice is stored."""

from datetime import date

from django.db import transaction

from invoicing.domain.invoice_number import invoice_number, series_without_signs, series_year
from invoicing.models import Invoice, MoneyRules, NumberSeries
from invoicing.selectors.money_rules import money_rules
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class NumbersOutOfOrder(RuleBroken):
    """A number would get an earlier day than the one before it."""

    code = "numbers_out_of_order"


class NumberTaken(RuleBroken):
    """Another series has given that number already."""

    code = "number_taken"


@transaction.atomic
def take_number(*, invoice: Invoice, day: date, rules: MoneyRules | None = None) -> str:
    """The next number for `invoice` issued on `day`; the invoice is not changed. `rules` where they were read already.

    The counter row stays locked until the caller's transaction ends, so whoever fails gives the number back: no gap,
    no double. Call it as late as can be: all who issue in this series wait.
    """
    scope = Scope(invoice.business_id)
    rules = rules or money_rules(scope)
    prefix = rules.credit_prefix if invoice.is_credit_note else rules.invoice_prefix
    series = _locked(scope, prefix, series_year(day, by_year=rules.series_by_year))
    number = invoice_number(series.prefix, series.year, series.last + 1)
    _refuse(scope, series, number, day)
    series.last += 1
    series.save(update_fields=["last"])
    return number


def _locked(scope: Scope, prefix: str, year: int) -> NumberSeries:
    rows = NumberSeries.objects.within(scope).select_for_update()
    series, _ = rows.get_or_create(business_id=scope.business_id, prefix=prefix, year=year)
    return series


def _refuse(scope: Scope, series: NumberSeries, number: str, day: date) -> None:
    """An auditor reads numbers and days side by side: both only go up. And a payment names one invoice alone."""
    last = invoice_number(series.prefix, series.year, series.last) if series.last else ""
    known = Invoice.objects.within(scope).filter(number__in=[last, number] if last else [number])
    given = dict(known.values_list("number", "issued_on"))
    if not series.last and _is_like_another(scope, series):
        raise NumberTaken(
            f"Numbers like {number} cannot be told from earlier ones in a bank transfer: choose another prefix."
        )
    if number in given:
        raise NumberTaken(f"{number} was given already: choose another prefix for the numbers.")
    before = given.get(last)
    if before is not None and day < before:
        raise NumbersOutOfOrder(
            f"{last} was issued on {before:%-d %B %Y}: the next one cannot be of an earlier day."
        )


def _is_like_another(scope: Scope, series: NumberSeries) -> bool:
    """True where a series that has given numbers differs from this new one in signs alone."""
    own = series_without_signs(series.prefix, series.year)
    others = NumberSeries.objects.within(scope).filter(last__gt=0).exclude(pk=series.pk)
    return own in {series_without_signs(*row) for row in others.values_list("prefix", "year")}
