"""A business with a long stock ledger: twelve things, two vans, visits with cows, moves, counts, write-offs."""

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from random import Random
from uuid import UUID

from farms.models import Cow
from tests.factories import House, make_consumable, make_house, make_van
from visits.domain.kit.stock_kinds import ConsumableKind, MovementKind, UseOf, WriteOffReason
from visits.models import Consumable, StockCount, StockLot, StockMovement, StockPlace, Trim, Visit
from visits.services.kit.stock_place import place_of_van, store_of

START = datetime(2020, 1, 6, 9, tzinfo=UTC)
ITEMS, COWS = 12, 8
BATCH = 900


class LargeLedger:
    """Lines in the order of time; the store is loaded into a van before each visit, and buys in time."""

    def __init__(self, house: House, seed: int = 1) -> None:
        self.house, self.chance = house, Random(seed)
        vans = (house.van, make_van(house.business, house.trimmer, "Van 2"))
        self.store, self.vans = store_of(house.scope), [place_of_van(van) for van in vans]
        self.items = [
            make_consumable(house.business, f"Thing {n}", ConsumableKind.OTHER, unit="ml")
            for n in range(ITEMS)
        ]
        self.rows: list[StockMovement] = []

    def visits(self, count: int) -> list[Visit]:
        """A finished visit a weekday or so, with their cows; kept."""
        rows = []
        for n in range(count):
            at = START + timedelta(days=n)
            words = {
                "reason": "routine",
                "state": "finished",
                "asked_at": at,
                "changed_at": at,
                "started_at": at,
            }
            words |= {
                "due_from": at.date(),
                "due_until": at.date(),
                "head_count": COWS,
                "expected_minutes": 60,
            }
            words |= {"finished_at": at + timedelta(hours=6), "van": self.house.van}
            rows.append(Visit(business=self.house.business, farm=self.house.farm, **words))
        return Visit.objects.bulk_create(rows, batch_size=BATCH)

    def write(self, visits: list[Visit]) -> None:
        """All lines of these visits."""
        herd = [Cow(business=self.house.business, farm=self.house.farm, number=f"L{n}") for n in range(COWS)]
        cows = Cow.objects.bulk_create(herd)
        trims = [self._trim(visit, cow, n) for visit in visits for n, cow in enumerate(cows)]
        of_visit: dict[int, list[Trim]] = {}
        for trim in Trim.objects.bulk_create(trims, batch_size=BATCH):
            of_visit.setdefault(trim.visit_id, []).append(trim)
        for n, visit in enumerate(visits):
            self._day(n, visit, of_visit[visit.pk])
        StockMovement.objects.bulk_create(self.rows, batch_size=BATCH)

    def _trim(self, visit: Visit, cow: Cow, n: int) -> Trim:
        at = START if visit.started_at is None else visit.started_at + timedelta(minutes=10 * n)
        words = {"kind": "functional", "recorded_at": at, "recorded_by": self.house.trimmer}
        return Trim(business=self.house.business, visit=visit, cow=cow, **words)

    def _day(self, n: int, visit: Visit, trims: list[Trim]) -> None:
        start, van = START + timedelta(days=n), self.vans[n % 2]
        for item in self.items:
            if n % 60 == 0:
                self._buy(item, start)
            if n % 4 < 2:
                self._load(item, van, start, n)
            for trim in trims[: self.chance.randint(4, COWS)]:
                words = {"use_of": UseOf.COW, "trim": trim}
                self._line(
                    item, van, MovementKind.USED, -self.chance.randint(5, 60), trim.recorded_at, **words
                )
            if n % 90 == 89:
                self._count(item, van, start + timedelta(hours=9))

    def _buy(self, item: Consumable, start: datetime) -> None:
        at, day = start - timedelta(hours=20), start.date()
        expires = date(day.year + 1, day.month, 1)
        lot = StockLot.objects.create(
            business=self.house.business,
            consumable=item,
            bought_on=day,
            expires_on=expires,
            code=f"{day:%y%m}",
        )
        cost = Decimal(self.chance.randint(10_000, 30_000)) / 100
        self._line(item, self.store, MovementKind.BOUGHT, 16_000, at, lot=lot, cost=cost)

    def _load(self, item: Consumable, van: StockPlace, start: datetime, n: int) -> None:
        at, uid = start - timedelta(hours=14), UUID(int=n * 100 + item.pk)
        self._line(item, self.store, MovementKind.MOVED, -450, at, uid=uid)
        self._line(item, van, MovementKind.MOVED, 450, at, uid=uid)

    def _count(self, item: Consumable, van: StockPlace, at: datetime) -> None:
        words = {"counted": 100, "at": at, "noted_at": at, "by": self.house.owner}
        count = StockCount.objects.create(business=self.house.business, consumable=item, place=van, **words)
        self._line(item, van, MovementKind.COUNTED, self.chance.choice([-7, 4, 9]), at, count=count)
        self._line(item, van, MovementKind.WRITTEN_OFF, -3, at, because=WriteOffReason.BROKEN)

    def _line(
        self,
        item: Consumable,
        place: StockPlace,
        kind: MovementKind,
        quantity: int,
        at: datetime,
        **words: object,
    ) -> None:
        told = {
            "consumable": item,
            "place": place,
            "kind": kind,
            "quantity": quantity,
            "at": at,
            "noted_at": at,
        }
        self.rows.append(StockMovement(business=self.house.business, **told, **words))


def large_ledger(visits: int, seed: int = 1) -> tuple[LargeLedger, list[Visit]]:
    """`visits` visits; 100,000 lines are some 1,170 of them."""
    made = LargeLedger(make_house(), seed)
    rows = made.visits(visits)
    made.write(rows)
    return made, rows
