"""One consumable's ledger over the history, as a careful trimmer would have kept it."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from decimal import Decimal
from uuid import uuid4

from trimops.kernel.clock import local_day
from trimops.portal.demo.demo_people import ConsumableSketch
from trimops.portal.demo.invent_history import ZONE
from visits.domain.kit.booked_recipe import recipe_words
from visits.domain.kit.stock_kinds import MovementKind, UseOf
from visits.models import Consumable, StockLot, StockMovement, StockPlace, Trim, WashDown

BATCH = 900
EVENING_BEFORE = timedelta(hours=14)
BUYS_BELOW = Decimal("0.5")


class Ledger:
    """Vans are topped up when the day would use more than half of what is left, the store buys a pack in time."""

    def __init__(
        self, item: Consumable, sketch: ConsumableSketch, store: StockPlace, vans: Sequence[StockPlace]
    ) -> None:
        self.item, self.sketch, self.store, self.vans = item, sketch, store, vans
        self.left: dict[int, Decimal] = dict.fromkeys((place.pk for place in (store, *vans)), Decimal(0))
        self.rows: list[StockMovement] = []
        self.lots: list[StockLot] = []

    def load(self, van: int, start: datetime, wanted: Decimal) -> None:
        """Before a visit of `van` that will use `wanted`: fill the van, and buy what the store lacks for it."""
        place, at = self.vans[van], start - EVENING_BEFORE
        if self.left[place.pk] >= max(wanted, self.sketch.carried * Decimal("0.4")):
            return
        # It may be asked for more than it usually carries.
        amount = max(self.sketch.carried, wanted) - self.left[place.pk]
        while self.left[self.store.pk] < amount + self.sketch.pack * BUYS_BELOW:
            self._buy(at - timedelta(minutes=5))
        uid = uuid4()
        self._write(self.store, MovementKind.MOVED, -amount, at, uid=uid)
        self._write(place, MovementKind.MOVED, amount, at, uid=uid)

    def use(self, van: int, trim: Trim, quantity: Decimal) -> None:
        """What a cow used."""
        words = {"use_of": UseOf.COW, "trim": trim, "note": recipe_words(self.sketch.recipe)}
        self._write(self.vans[van], MovementKind.USED, -quantity, trim.recorded_at, **words)

    def wash(self, van: int, wash: WashDown, quantity: Decimal) -> None:
        """What was mixed for a wash-down."""
        words = {"use_of": UseOf.WASH, "visit": wash.visit}
        self._write(self.vans[van], MovementKind.USED, -quantity, wash.washed_at, **words)

    def save(self) -> None:
        """Lots and lines into the database, in the order of time."""
        StockLot.objects.bulk_create(self.lots, batch_size=BATCH)
        StockMovement.objects.bulk_create(sorted(self.rows, key=lambda row: row.at), batch_size=BATCH)

    def _buy(self, at: datetime) -> None:
        day = local_day(at, ZONE)
        shelf = self.item.shelf_days
        lot = StockLot(
            business_id=self.item.business_id,
            consumable=self.item,
            code=f"{day:%y%m}-{len(self.lots) + 1:02d}",
            bought_on=day,
            expires_on=day + timedelta(days=shelf) if shelf else None,
            supplier=self.item.supplier,
        )
        self.lots.append(lot)
        pack = Decimal(self.sketch.pack)
        # Prices crept up over the history.
        rise = Decimal("0.92") + Decimal(min(len(self.lots), 8)) / 100
        cost = (pack * self.sketch.cost * rise).quantize(Decimal("0.01"))
        self._write(self.store, MovementKind.BOUGHT, pack, at, lot=lot, cost=cost)

    def _write(
        self, place: StockPlace, kind: MovementKind, quantity: Decimal, at: datetime, **words: object
    ) -> None:
        self.left[place.pk] += quantity
        self.rows.append(
            StockMovement(
                business_id=self.item.business_id,
                consumable=self.item,
                place=place,
                kind=kind,
                quantity=quantity,
                at=at,
                noted_at=at,
                **words,
            )
        )
