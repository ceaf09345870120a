"""The kit's rows: consumables with their recipes, the ledger of eighteen months, knives with their edges."""

from decimal import Decimal

from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.demo_people import ConsumableSketch, Kit
from trimops.portal.demo.keep_ledger import Ledger
from trimops.portal.demo.past import PastVisit, SeenKey
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.use_rules import used_by_cow
from visits.models import Consumable, Trim, UseRule, Visit, WashDown
from visits.services.kit.stock_place import place_of_van, store_of


def build_stock(
    crew: Crew, kit: Kit, past: list[PastVisit], visits: list[Visit], trims: dict[SeenKey, Trim]
) -> list[Consumable]:
    """What each cow and each wash-down used, what was loaded for it and bought for that; nothing below nought."""
    items = [_item(crew, sketch) for sketch in kit.consumables]
    places = [place_of_van(van) for van in crew.vans]
    washes = _washes(past, visits)
    for item, sketch in zip(items, kit.consumables, strict=True):
        if sketch.per_wash:
            keys = [wash.pk for wash in washes.values()]
            WashDown.objects.within(item.scope).filter(pk__in=keys).update(consumable=item)
        _keep(Ledger(item, sketch, store_of(item.scope), places), past, trims, washes)
    return items


def _item(crew: Crew, sketch: ConsumableSketch) -> Consumable:
    item = Consumable(business=crew.business, name=sketch.name, pack=sketch.pack, **sketch.words)
    item.price = (sketch.cost * sketch.pack).quantize(Decimal("0.01"))
    item.unit = Unit(str(sketch.words["unit"])).value
    item.full_clean()
    item.save()
    for line in sketch.recipe:
        UseRule.objects.create(
            business=crew.business,
            consumable=item,
            per=line.per,
            quantity=line.quantity,
            block_kind=line.block_kind or "",
        )
    return item


def _washes(past: list[PastVisit], visits: list[Visit]) -> dict[int, WashDown]:
    """One wash-down for each visit that was made, when the last cow was out."""
    keys = [visit.pk for visit in visits]
    rows = WashDown.objects.within(visits[0].scope).filter(visit_id__in=keys) if visits else ()
    by_visit = {row.visit_id: row for row in rows}
    return {number: by_visit[visit.pk] for number, visit in enumerate(visits) if visit.pk in by_visit}


def _keep(
    ledger: Ledger, past: list[PastVisit], trims: dict[SeenKey, Trim], washes: dict[int, WashDown]
) -> None:
    recipes = {0: ledger.sketch.recipe}
    # By the clock, so that the store is never emptied before it was filled.
    for number, visit in sorted(enumerate(past), key=lambda pair: pair[1].start):
        if not visit.is_done or visit.is_called_off:
            continue
        used = {seen.cow: used_by_cow(recipes, seen.entry).get(0, Decimal(0)) for seen in visit.cows}
        wash = ledger.sketch.per_wash if number in washes else Decimal(0)
        ledger.load(visit.van, visit.start, sum(used.values(), wash))
        for cow, quantity in used.items():
            if quantity:
                ledger.use(visit.van, trims[number, cow], quantity)
        if wash:
            ledger.wash(visit.van, washes[number], wash)
    ledger.save()
