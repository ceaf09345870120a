"""Stock and knives over the history: what each cow used up, what was bought in between, when knives were sharpened."""

from collections import Counter
from collections.abc import Iterator
from datetime import datetime, timedelta
from decimal import Decimal
from random import Random

from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.demo_people import ConsumableSketch, Kit
from trimops.portal.demo.past import PastVisit, SeenKey
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import CowEntry
from visits.models import Consumable, ConsumableKind, Knife, MovementKind, Sharpening, StockMovement, Trim

BATCH = 900
BUYS_BELOW_SHARE = Decimal("0.25")


def build_stock(crew: Crew, kit: Kit, past: list[PastVisit], trims: dict[SeenKey, Trim]) -> list[Consumable]:
    """The ledger never falls below nought: a pack is bought when a quarter of one is left."""
    items = Consumable.objects.bulk_create([_item(crew, sketch) for sketch in kit.consumables])
    rows: list[StockMovement] = []
    for item, sketch in zip(items, kit.consumables, strict=True):
        rows += _ledger(item, sketch, past, trims)
    StockMovement.objects.bulk_create(rows, batch_size=BATCH)
    return items


def _item(crew: Crew, sketch: ConsumableSketch) -> Consumable:
    return Consumable(
        business=crew.business,
        name=sketch.name,
        kind=sketch.kind,
        unit=sketch.unit,
        block_kind=sketch.block_kind,
        used_per_block=sketch.used_per_block,
    )


def _ledger(
    item: Consumable, sketch: ConsumableSketch, past: list[PastVisit], trims: dict[SeenKey, Trim]
) -> Iterator[StockMovement]:
    pack = Decimal(sketch.pack)
    left = Decimal(0)
    for number, visit in enumerate(past):
        if left < pack * BUYS_BELOW_SHARE:
            left += pack
            yield _bought(item, pack, sketch.cost, visit.start - timedelta(hours=14))
        for seen in visit.cows:
            used = used_of(item, seen.entry)
            if used:
                left -= used
                yield _used(item, used, trims[number, seen.cow])


def used_of(item: Consumable, entry: CowEntry) -> Decimal:
    """What one cow used of `item`, as the crush page counts it."""
    actions = [action for foot in entry.feet for action in foot.actions]
    blocks = Counter(action.block_kind.value for action in actions if action.block_kind)
    kinds = Counter(action.kind for action in actions)
    used = Decimal(blocks[item.block_kind]) if item.block_kind else Decimal(0)
    used += item.used_per_block * sum(blocks.values())
    used += kinds[ActionKind.WRAP] if item.kind == ConsumableKind.WRAP else 0
    return used + (kinds[ActionKind.DRESSING] if item.kind == ConsumableKind.DRESSING else 0)


def _bought(item: Consumable, pack: Decimal, cost: Decimal, at: datetime) -> StockMovement:
    return StockMovement(
        business_id=item.business_id,
        consumable=item,
        kind=MovementKind.BOUGHT,
        quantity=pack,
        cost=pack * cost,
        at=at,
    )


def _used(item: Consumable, used: Decimal, trim: Trim) -> StockMovement:
    return StockMovement(
        business_id=item.business_id,
        consumable=item,
        van_id=trim.visit.van_id,
        kind=MovementKind.USED,
        quantity=-used,
        at=trim.recorded_at,
        trim=trim,
    )


def build_sharpenings(
    kit: Kit, knives: list[Knife], past: list[PastVisit], crew: Crew, chance: Random
) -> list[Sharpening]:
    """Each van works with one knife until its edge is done, then takes the next."""
    rows: list[Sharpening] = []
    for number, van in enumerate(crew.vans):
        mine = [knife for knife in knives if knife.van_id == van.pk]
        done, edge = 0, chance.randint(*kit.cows_per_edge)
        for visit in past:
            done += len(visit.cows) if visit.van == number else 0
            if done >= edge:
                knife = mine[len(rows) % len(mine)]
                evening = visit.start.replace(hour=19, minute=0)
                rows.append(_sharpening(knife, evening, done))
                done, edge = 0, chance.randint(*kit.cows_per_edge)
    return Sharpening.objects.bulk_create(rows, batch_size=BATCH)


def _sharpening(knife: Knife, at: datetime, cows: int) -> Sharpening:
    return Sharpening(business_id=knife.business_id, knife=knife, at=at, cows_since_last=cows)
