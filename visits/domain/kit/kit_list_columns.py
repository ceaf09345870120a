"""The columns of a list of consumables: our heading, how lists in the world may call it, how a cell is read."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from visits.domain.kit.kit_list_cells import Reader, address, day, figure, kind, text, unit, whole, yes
from visits.domain.kit.kit_sheet import OCCASIONS, Occasion

USE = figure("0", "99999.99")
STOCK = figure("-99999999.99", "99999999.99")


@dataclass(frozen=True)
class Column:
    """`key` is the name in `KitSheet`; the last three keys are of the stock that is there already."""

    key: str
    heading: str
    read: Reader
    aliases: tuple[str, ...] = ()


COLUMNS: tuple[Column, ...] = (
    Column("name", "name", text(80), ("item", "consumable", "article", "product", "what")),
    Column("kind", "kind", kind, ("sort", "type", "category")),
    Column("size", "size", text(40)),
    Column("unit", "unit", unit, ("countedin", "unitofmeasure")),
    Column("supplier", "supplier", text(120), ("bought from", "vendor", "from")),
    Column(
        "supplier_email", "supplier's mail", address, ("suppliersemail", "supplieremail", "email", "mail")
    ),
    Column("pack", "pack", figure("0.01", "999999.99"), ("packof", "packsize", "perpack")),
    Column("price", "price of a pack", figure("0", "99999999.99"), ("price", "packprice")),
    Column("lead_days", "days to arrive", whole(0, 365), ("leaddays", "leadtime", "deliverydays")),
    Column("service_percent", "service level %", figure("50", "99.9", 1), ("servicelevel", "service")),
    Column("shelf_days", "keeps days", whole(0, 32767), ("shelfdays", "shelflife", "keeps")),
    Column("lowest_celsius", "lowest °C", figure("-99.9", "99.9", 1), ("lowestcelsius", "lowesttemperature")),
    Column("grams_per_ml", "g per ml", figure("0.1", "20", 3), ("gramsperml", "density")),
    Column("active_substance", "active substance", text(80), ("substance",)),
    Column("dilution", "dilution", text(40)),
    Column(
        "contact_minutes", "contact minutes", figure("0", "9999.9", 1), ("contacttime", "contacttimeminutes")
    ),
    Column("note", "note", text(300), ("notes", "remark", "remarks")),
    Column("is_active", "in use", yes, ("active", "used")),
    Column("code", "lot", text(60), ("lotnumber", "batch", "charge")),
    Column("expires_on", "best before", day, ("expires", "expireson", "expiry", "useby")),
    Column("cost", "stock cost", figure("0", "99999999.99"), ("costofthestock", "stockvalue", "paid")),
)
STOCK_OF = "stock in "
PER = "per "


@dataclass(frozen=True)
class Heads:
    """Which column says what: by its index a column, an occasion of the recipe, or the name of a place."""

    columns: dict[int, Column] = field(default_factory=dict)
    occasions: dict[int, Occasion] = field(default_factory=dict)
    places: dict[int, str] = field(default_factory=dict)
    unknown: tuple[str, ...] = ()
    twice: tuple[str, ...] = ()


def read_heads(headings: Sequence[str], places: Sequence[str]) -> Heads:
    """The headings in any order and spelling; what is not understood, or stands twice, is named."""
    known = {_packed(alias): column for column in COLUMNS for alias in (column.heading, *column.aliases)}
    uses = {_packed(PER + words): occasion for occasion, words in OCCASIONS.items()}
    stock = {(STOCK_OF + name).casefold(): name for name in places}
    heads = Heads()
    unknown, twice, seen = [], [], set()
    for index, heading in enumerate(headings):
        packed = _packed(heading)
        what = stock.get(" ".join(heading.casefold().split())) or known.get(packed) or uses.get(packed)
        if what is None:
            unknown += [heading] if heading else []
        elif what in seen:
            twice.append(heading)
        elif isinstance(what, Column):
            heads.columns[index] = what
        elif isinstance(what, str):
            heads.places[index] = what
        else:
            heads.occasions[index] = what
        seen.add(what)
    return Heads(heads.columns, heads.occasions, heads.places, tuple(unknown), tuple(twice))


def _packed(heading: str) -> str:
    return re.sub(r"[^a-z%°]", "", heading.casefold())
