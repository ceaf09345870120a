"""What most trimmers carry, as a list to begin with. Names are general words; nothing is bought from anybody yet.

Amounts are common practice without a source, but for glue: 40 ml a block (Univ. of Wisconsin, 188 blocks of 5 inch
oak; trade-facts 3.5) and disinfectant: an iodophor at 1:100 (Gillespie et al. 2019/20; trade-facts 5.1; its label
decides). Pack sizes are round figures. Each business sets its own.
"""

from decimal import Decimal

from visits.domain.actions import BlockKind
from visits.domain.kit.kit_sheet import KitSheet
from visits.domain.kit.stock_kinds import ConsumableKind, Unit, UsePer

_BLOCK, _ANY = UsePer.BLOCK, None
_PRACTICE = "Common practice; set what you use."

STARTER_LIST: tuple[KitSheet, ...] = (
    KitSheet(
        "Wooden block",
        ConsumableKind.BLOCK,
        Unit.EACH,
        size="130 mm",
        recipe={(_BLOCK, BlockKind.WOOD): Decimal(1)},
    ),
    KitSheet(
        "Rubber block", ConsumableKind.BLOCK, Unit.EACH, recipe={(_BLOCK, BlockKind.RUBBER): Decimal(1)}
    ),
    KitSheet("Foam block", ConsumableKind.BLOCK, Unit.EACH, recipe={(_BLOCK, BlockKind.EVA): Decimal(1)}),
    KitSheet("Shoe", ConsumableKind.BLOCK, Unit.EACH, recipe={(_BLOCK, BlockKind.SHOE): Decimal(1)}),
    KitSheet(
        "Two-part glue",
        ConsumableKind.GLUE,
        Unit.ML,
        pack=Decimal(1000),
        recipe={(_BLOCK, _ANY): Decimal(40)},
        note="40 ml a block was measured with large oak blocks; set what you use. Shelf life and lowest temperature: "
        "the tin.",
    ),
    KitSheet(
        "Wrap",
        ConsumableKind.WRAP,
        Unit.EACH,
        size="100 mm wide",
        recipe={(UsePer.WRAP, _ANY): Decimal(1)},
        note=_PRACTICE,
    ),
    KitSheet(
        "Dressing pad",
        ConsumableKind.DRESSING,
        Unit.EACH,
        recipe={(UsePer.DRESSING, _ANY): Decimal(1)},
        note=_PRACTICE,
    ),
    KitSheet(
        "Disposable gloves",
        ConsumableKind.GLOVES,
        Unit.PAIR,
        pack=Decimal(50),
        recipe={(UsePer.VISIT, _ANY): Decimal(3)},
        note=_PRACTICE,
    ),
    KitSheet(
        "Disinfectant concentrate",
        ConsumableKind.DISINFECTANT,
        Unit.ML,
        pack=Decimal(1000),
        active_substance="iodophor",
        dilution="1:100",
        note="Used by the wash-downs you note. What its label says goes before this.",
    ),
)
