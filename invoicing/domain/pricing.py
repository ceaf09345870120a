"""What can be charged for, and a line of a draft: what, how many, at which price, and why."""

from dataclasses import dataclass
from datetime import date
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
    def label_with_unit(self) -> str:
        """Travel says by what it is priced."""
        by = {PriceItem.KILOMETRE: "a kilometre", PriceItem.MILE: "a mile", PriceItem.TRAVEL: "a visit"}
        return f"{self.label}, {by[self]}" if self in by else self.label

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
class DraftLine:
    """One line to be billed. `allowance` is taken off; `keys` name the pieces of work that the line bills."""

    item: PriceItem
    description: str
    quantity: Decimal
    unit: str
    unit_price: Decimal
    tax_category: str
    tax_percent: Decimal
    why: str
    tax_reason: str = ""
    tax_reason_code: str = ""
    allowance: Decimal = Decimal(0)
    allowance_percent: Decimal | None = None
    allowance_reason: str = ""
    visit_id: int | None = None
    done_on: date | None = None
    keys: tuple[str, ...] = ()
