"""From the work done to the lines of a draft: what is charged, how many, at which price, and why."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum


class PriceItem(StrEnum):
    """What a price list has a price for."""

    FUNCTIONAL = "functional"
    CORRECTIVE = "corrective"
    CHECK = "check"
    BLOCK = "block"
    SHOE = "shoe"
    WRAP = "wrap"
    DRESSING = "dressing"
    CALL_OUT = "call_out"
    URGENT = "urgent"
    OUT_OF_HOURS = "out_of_hours"
    KILOMETRE = "kilometre"
    MILE = "mile"
    TRAVEL = "travel"
    MINIMUM = "minimum"
    OTHER = "other"

    @property
    def label(self) -> str:
        return _LABELS[self]

    @property
    def unit(self) -> str:
        """Unit code of UN/ECE Recommendation 20: C62 is one, KMT a kilometre, SMI a statute mile."""
        return {PriceItem.KILOMETRE: "KMT", PriceItem.MILE: "SMI"}.get(self, "C62")


_LABELS = {
    PriceItem.FUNCTIONAL: "Functional trim",
    PriceItem.CORRECTIVE: "Corrective trim",
    PriceItem.CHECK: "Cow looked at",
    PriceItem.BLOCK: "Block",
    PriceItem.SHOE: "Shoe",
    PriceItem.WRAP: "Wrap",
    PriceItem.DRESSING: "Dressing",
    PriceItem.CALL_OUT: "Call-out",
    PriceItem.URGENT: "Urgent visit supplement",
    PriceItem.OUT_OF_HOURS: "Out-of-hours supplement",
    PriceItem.KILOMETRE: "Travel",
    PriceItem.MILE: "Travel",
    PriceItem.TRAVEL: "Travel",
    PriceItem.MINIMUM: "Up to the minimum charge",
    PriceItem.OTHER: "Other",
}


class NoPrice(ValueError):
    """Work was done that the price list has no price for."""


@dataclass(frozen=True)
class PricedItem:
    """A price of the list: unit price without tax, tax category and percent."""

    unit_price: Decimal
    tax_category: str
    tax_percent: Decimal
    tax_reason: str = ""


@dataclass(frozen=True)
class WorkDone:
    """What a finished visit can be charged for."""

    counts: Mapping[PriceItem, Decimal]
    why: Mapping[PriceItem, str]


@dataclass(frozen=True)
class DraftLine:
    """One line to be billed."""

    item: PriceItem
    description: str
    quantity: Decimal
    unit: str
    unit_price: Decimal
    tax_category: str
    tax_percent: Decimal
    why: str
    tax_reason: str = ""


def draft_lines(work: WorkDone, prices: Mapping[PriceItem, PricedItem]) -> list[DraftLine]:
    """Lines in the order of the price list. NoPrice names the item that has work but no price.

    An item with a price of nought is left off: what costs nothing is not billed.
    """
    lines = []
    for item in PriceItem:
        quantity = work.counts.get(item, Decimal(0))
        if not quantity:
            continue
        if item not in prices:
            raise NoPrice(f"The price list has no price for “{item.label}”: add one, then draft again.")
        if prices[item].unit_price:
            lines.append(_line(item, quantity, prices[item], work.why.get(item, "")))
    return lines


def _line(item: PriceItem, quantity: Decimal, price: PricedItem, why: str) -> DraftLine:
    return DraftLine(
        item,
        item.label,
        quantity,
        item.unit,
        price.unit_price,
        price.tax_category,
        price.tax_percent,
        why,
        price.tax_reason,
    )
