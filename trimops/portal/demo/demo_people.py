"""The invented business, its people and its kit, read from `fixtures/demo`."""

import json
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from trimops.portal.demo.demo_files import FOLDER


@dataclass(frozen=True)
class PersonSketch:
    """One sign-in of the demo."""

    role: str
    name: str
    email: str


@dataclass(frozen=True)
class VanSketch:
    """A van, who drives it (a role) and where it stands at night."""

    name: str
    driver: str
    east_km: float
    north_km: float
    base: str


@dataclass(frozen=True)
class Cast:
    """Everybody, and the middle of the valley."""

    business: dict[str, str | int]
    latitude: float
    longitude: float
    password: str
    people: tuple[PersonSketch, ...]
    vans: tuple[VanSketch, ...]
    contact_names: tuple[str, ...]
    vet: str
    planning: dict[str, float]


@dataclass(frozen=True)
class ConsumableSketch:
    """A kind of stock: what a pack holds and what one unit costs."""

    name: str
    kind: str
    unit: str
    pack: int
    cost: Decimal
    block_kind: str
    used_per_block: Decimal


@dataclass(frozen=True)
class Kit:
    """Prices, stock and knives."""

    tax: dict[str, str]
    prices: dict[str, Decimal]
    earlier_share: Decimal
    consumables: tuple[ConsumableSketch, ...]
    knives: tuple[str, ...]
    cows_per_edge: tuple[int, int]


@cache
def cast() -> Cast:
    """The people of `people.json`."""
    told = json.loads((FOLDER / "people.json").read_text(encoding="utf-8"))
    return Cast(
        business=told["business"],
        latitude=told["valley"]["middle_latitude"],
        longitude=told["valley"]["middle_longitude"],
        password=told["password"],
        people=tuple(PersonSketch(**row) for row in told["people"]),
        vans=tuple(VanSketch(**row) for row in told["vans"]),
        contact_names=tuple(told["contact_names"]),
        vet=told["vet"],
        planning=told["planning"],
    )


@cache
def kit() -> Kit:
    """The kit of `kit.json`."""
    told = json.loads((FOLDER / "kit.json").read_text(encoding="utf-8"))
    return Kit(
        tax=told["tax"],
        prices={item: Decimal(price) for item, price in told["prices"].items()},
        earlier_share=Decimal(told["raise"]),
        consumables=tuple(_consumable(row) for row in told["consumables"]),
        knives=tuple(told["knives"]),
        cows_per_edge=(told["cows_per_edge"][0], told["cows_per_edge"][1]),
    )


def _consumable(row: dict[str, str]) -> ConsumableSketch:
    return ConsumableSketch(
        name=row["name"],
        kind=row["kind"],
        unit=row["unit"],
        pack=int(row["pack"]),
        cost=Decimal(row["cost"]),
        block_kind=row.get("block_kind", ""),
        used_per_block=Decimal(row.get("used_per_block", "0")),
    )
