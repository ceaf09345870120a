"""What lies where now, by the ledger."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from django.db.models import Max, Q, Sum

from trimops.kernel.scope import Scope
from visits.domain.kit.hundredths import exact_sum
from visits.domain.kit.stock_kinds import MovementKind
from visits.models import Consumable, StockCount, StockMovement, StockPlace


@dataclass(frozen=True)
class PlaceStock:
    """What the ledger has of a consumable at a place; below nought: more was taken than ever came, so count it.

    `is_told`: whether anything but use was ever written there; if not, nobody has said yet what lies there.
    """

    place: StockPlace
    balance: Decimal = Decimal(0)
    is_told: bool = False
    counted_at: datetime | None = None

    @property
    def is_short(self) -> bool:
        return self.balance < 0


@dataclass(frozen=True)
class ItemStock:
    """A consumable at all places: the store first (where there is one), then the vans."""

    consumable: Consumable
    places: Sequence[PlaceStock]

    @property
    def balance(self) -> Decimal:
        return sum((each.balance for each in self.places), Decimal(0))

    @property
    def is_told(self) -> bool:
        """Whether anybody has said yet what lies anywhere."""
        return any(each.is_told for each in self.places)

    @property
    def is_short(self) -> bool:
        """Whether any place is below nought, whatever the others have."""
        return any(each.is_short for each in self.places)

    def at(self, place: int) -> PlaceStock:
        """KeyError for a place that is none of the business's."""
        return {each.place.pk: each for each in self.places}[place]


def stock_now(scope: Scope) -> list[ItemStock]:
    """Each consumable in use, and those out of use of which something is left or lacking. Four queries."""
    places = list(StockPlace.objects.within(scope).select_related("van"))
    sums, counted = _sums(scope), _counted(scope)
    found = []
    for item in Consumable.objects.within(scope):
        stock = [
            _at(place, sums.get((item.pk, place.pk)), counted.get((item.pk, place.pk))) for place in places
        ]
        if item.is_active or any(each.balance for each in stock):
            found.append(ItemStock(item, stock))
    return found


_Sum = tuple[Decimal, bool]


def _at(place: StockPlace, total: _Sum | None, counted_at: datetime | None) -> PlaceStock:
    balance, is_told = total or (Decimal(0), False)
    return PlaceStock(place, balance, is_told or counted_at is not None, counted_at)


def _sums(scope: Scope) -> Mapping[tuple[int, int], _Sum]:
    rows = StockMovement.objects.within(scope).order_by().values_list("consumable_id", "place_id")
    told = Max("pk", filter=~Q(kind=MovementKind.USED))
    sums = rows.annotate(total=Sum("quantity"), told=told)
    return {(item, place): (exact_sum(total), told is not None) for item, place, total, told in sums}


def _counted(scope: Scope) -> Mapping[tuple[int, int], datetime]:
    rows = StockCount.objects.within(scope).order_by().values_list("consumable_id", "place_id")
    return {(item, place): at for item, place, at in rows.annotate(Max("at"))}
