"""The price lists of a business for its page: each with what changed against the one before."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db.models import Prefetch

from invoicing.domain.out_of_hours import UsualHours, hours_in_words
from invoicing.domain.price_change import change_percent
from invoicing.domain.pricing import PriceItem
from invoicing.models import Price, PriceList, TaxRate, TravelBand
from invoicing.models.prices import PriceListQuerySet
from invoicing.selectors.billed_on import last_day_of, prices_are_billed_on
from invoicing.selectors.period_lock import locked_until
from invoicing.selectors.price_book import rates_held
from invoicing.selectors.tax_choices import rate_words
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class PriceRow:
    """One step of an item. `change`: percent against the list before; None where that says nothing."""

    label: str
    from_quantity: int
    unit_price: Decimal
    tax: str
    change: Decimal | None
    is_new: bool


@dataclass(frozen=True)
class ShownList:
    """A list with its rows; `stays`: why it cannot be mended any more, "" where it can."""

    row: PriceList
    last_day: date | None
    prices: Sequence[PriceRow]
    bands: Sequence[TravelBand]
    hours: str
    stays: str


def shown_lists(scope: Scope, lists: Sequence[PriceList], before: PriceList | None) -> list[ShownList]:
    """`lists` the newest first, of `price_lists`; `before` is the one that the last of them followed."""
    closed = locked_until(scope)
    followed: list[PriceList | None] = [*lists[1:], before]
    return [_shown(scope, row, earlier, closed) for row, earlier in zip(lists, followed, strict=False)]


def price_lists(scope: Scope) -> PriceListQuerySet:
    """All lists with their prices, the newest first."""
    prices = Prefetch("prices", queryset=Price.objects.within(scope).order_by("id"))
    rows: PriceListQuerySet = PriceList.objects.within(scope).order_by("-valid_from")
    return rows.prefetch_related(prices)


def _shown(scope: Scope, row: PriceList, earlier: PriceList | None, closed: date | None) -> ShownList:
    rates = rates_held(scope, row.valid_from)
    bands = list(TravelBand.objects.within(scope).filter(price_list=row))
    rows = [_price_row(price, _by_step(earlier), rates) for price in _in_order(row)]
    return ShownList(row, last_day_of(row), rows, bands, _hours(row), _why_it_stays(row, closed))


def _hours(row: PriceList) -> str:
    """The usual hours in words, where a visit outside of them costs more."""
    if not any(price.item == PriceItem.OUT_OF_HOURS for price in row.prices.all()):
        return ""
    return hours_in_words(UsualHours(row.usual_from, row.usual_until, row.usual_weekdays))


def _in_order(row: PriceList) -> list[Price]:
    order = [item.value for item in PriceItem]
    return sorted(row.prices.all(), key=lambda price: (order.index(price.item), price.from_quantity))


def _by_step(row: PriceList | None) -> dict[tuple[str, int], Decimal] | None:
    return {(p.item, p.from_quantity): p.unit_price for p in row.prices.all()} if row else None


def _price_row(
    price: Price, before: Mapping[tuple[str, int], Decimal] | None, rates: Mapping[str, TaxRate]
) -> PriceRow:
    known = before.get((price.item, price.from_quantity)) if before is not None else None
    change = change_percent(known, price.unit_price) if known is not None else None
    rate = rates.get(price.tax_code)
    tax = rate_words(rate) if rate else price.tax_code
    return PriceRow(
        PriceItem(price.item).label_with_unit,
        price.from_quantity,
        price.unit_price,
        tax,
        change,
        before is not None and known is None,
    )


def _why_it_stays(row: PriceList, closed: date | None) -> str:
    if closed is not None and row.valid_from <= closed:
        return "it begins in a closed period"
    return "work was billed at it" if prices_are_billed_on(row) else ""
