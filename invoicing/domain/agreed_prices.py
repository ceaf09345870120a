"""What was agreed with one farm changes the price of its lines."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from invoicing.domain.pricing import PriceItem


class AgreementKind(StrEnum):
    """What an agreement says."""

    PERCENT = "percent"
    PRICE = "price"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    AgreementKind.PERCENT: "Percent off",
    AgreementKind.PRICE: "A price of its own",
}


@dataclass(frozen=True)
class Agreed:
    """One agreement in force: `amount` is percent off, or the price; `item` None: for everything but the minimum."""

    kind: AgreementKind
    amount: Decimal
    why: str
    valid_from: date
    item: PriceItem | None = None


def agreed_for(item: PriceItem, agreed: Sequence[Agreed]) -> Agreed | None:
    """The one that holds for `item`; only one ever does, they never add up.

    Agreed for the item itself beats agreed for all; of two alike the later one holds, of two from one day the last in
    the list. The minimum charge is changed only by an agreement that names it.
    """
    own = [one for one in agreed if one.item is item]
    general = [one for one in agreed if one.item is None and item is not PriceItem.MINIMUM]
    return max(enumerate(own or general), key=_later, default=(0, None))[1]


def _later(numbered: tuple[int, Agreed]) -> tuple[date, int]:
    return numbered[1].valid_from, numbered[0]
