"""Whether what held was billed on: then it stays as it was."""

from datetime import date, timedelta

from django.db.models import Min

from invoicing.models import InvoiceLine, InvoiceState, PriceList, TaxRate
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet


def last_day_of(price_list: PriceList) -> date | None:
    """The day before the next list begins; None for the newest."""
    return _day_before_next(PriceList.objects.within(price_list.scope), price_list.valid_from)


def prices_are_billed_on(price_list: PriceList) -> bool:
    """Whether an issued paper bills work of a day on which the list holds."""
    scope = price_list.scope
    return _is_billed(scope, price_list.valid_from, last_day_of(price_list))


def rate_is_billed_on(rate: TaxRate) -> bool:
    """Whether an issued paper bills work at this category and percent on a day on which the rate holds."""
    last = _day_before_next(TaxRate.objects.within(rate.scope).filter(code=rate.code), rate.valid_from)
    return _is_billed(rate.scope, rate.valid_from, last, tax_category=rate.category, tax_percent=rate.percent)


def _day_before_next(rows: "TenantQuerySet[PriceList] | TenantQuerySet[TaxRate]", day: date) -> date | None:
    following = rows.filter(valid_from__gt=day).aggregate(first=Min("valid_from"))["first"]
    return following - timedelta(days=1) if following else None


def _is_billed(scope: Scope, first: date, last: date | None, **tax: object) -> bool:
    rows = InvoiceLine.objects.within(scope).filter(
        invoice__state=InvoiceState.ISSUED, visit__isnull=False, done_on__gte=first, **tax
    )
    return (rows.filter(done_on__lte=last) if last else rows).exists()
