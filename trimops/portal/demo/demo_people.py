"""The invented business, its people and its kit, read from `fixtures/demo`."""

import json
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from trimops.portal.demo.demo_files import FOLDER
from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe


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
    """A kind of stock: how it is described, its recipe, what a pack costs per unit, what a van carries.

    `words` are further fields of its row, as they stand in the file.
    """

    name: str
    pack: int
    cost: Decimal
    recipe: tuple[Recipe, ...]
    per_wash: Decimal
    carried: Decimal
    words: dict[str, str | int]


@dataclass(frozen=True)
class EdgeSketch:
    """How long edges last: cows by method (Weibull scale), one shape, how often each method is used."""

    shape: float
    cows: dict[str, float]
    methods: dict[str, float]
    still_cut: float


@dataclass(frozen=True)
class Kit:
    """Prices, stock and knives."""

    tax: dict[str, str]
    prices: dict[str, Decimal]
    earlier_share: Decimal
    consumables: tuple[ConsumableSketch, ...]
    knives: tuple[dict[str, str], ...]
    edges: EdgeSketch


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
        consumables=tuple(_consumable(row, row["recipe"]) for row in told["consumables"]),
        knives=tuple(told["knives"]),
        edges=EdgeSketch(**{name: value for name, value in told["edges"].items() if name != "note"}),
    )


NOT_WORDS = {"name", "pack", "cost", "recipe", "per_wash", "carried"}


def _consumable(row: dict[str, str], recipe: list[dict[str, str]]) -> ConsumableSketch:
    return ConsumableSketch(
        name=row["name"],
        pack=int(row["pack"]),
        cost=Decimal(row["cost"]),
        recipe=tuple(_recipe(line) for line in recipe),
        per_wash=Decimal(row.get("per_wash", 0)),
        carried=Decimal(row["carried"]),
        words={name: value for name, value in row.items() if name not in NOT_WORDS},
    )


def _recipe(line: dict[str, str]) -> Recipe:
    kind = line.get("block_kind")
    return Recipe(UsePer(line["per"]), Decimal(line["quantity"]), BlockKind(kind) if kind else None)
