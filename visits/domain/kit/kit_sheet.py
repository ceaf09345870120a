"""Everything that is said of one consumable, as plain values: what a form, a list or a starter list puts down."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import ConsumableKind, Unit, UsePer

Occasion = tuple[UsePer, BlockKind | None]
"""What uses it: with every block (None) or blocks of one kind, with every cow …"""

OCCASIONS: dict[Occasion, str] = {
    (UsePer.BLOCK, None): "block of any kind",
    (UsePer.BLOCK, BlockKind.WOOD): "wooden block",
    (UsePer.BLOCK, BlockKind.RUBBER): "rubber block",
    (UsePer.BLOCK, BlockKind.EVA): "foam block",
    (UsePer.BLOCK, BlockKind.SHOE): "shoe",
    (UsePer.WRAP, None): "foot wrapped",
    (UsePer.DRESSING, None): "dressing",
    (UsePer.FOOT, None): "foot lifted",
    (UsePer.COW, None): "cow",
    (UsePer.VISIT, None): "visit",
}
"""Every occasion a recipe can have a line for, in the order in which they are asked."""


@dataclass(frozen=True)
class KitSheet:
    """Named as the columns of `Consumable`; `recipe` is so much of it, in its unit, on each occasion."""

    name: str
    kind: ConsumableKind
    unit: Unit
    size: str = ""
    supplier: str = ""
    supplier_email: str = ""
    pack: Decimal = Decimal(1)
    price: Decimal | None = None
    lead_days: int = 5
    service_percent: Decimal | None = None
    shelf_days: int | None = None
    lowest_celsius: Decimal | None = None
    grams_per_ml: Decimal | None = None
    active_substance: str = ""
    dilution: str = ""
    contact_minutes: Decimal | None = None
    note: str = ""
    is_active: bool = True
    recipe: Mapping[Occasion, Decimal] = field(default_factory=dict)

    @property
    def full_name(self) -> str:
        """With its size, where the name does not say it already."""
        return full_name(self.name, self.size)


def full_name(name: str, size: str) -> str:
    """ "Wrap, 100 mm"; "Wooden block 130 mm" where the name says the size already."""
    return f"{name}, {size}" if size and size.casefold() not in name.casefold() else name
