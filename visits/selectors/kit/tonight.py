"""What is to be done this evening, for all vans: the one list behind the page, and behind whatever tells it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from trimops.accounts.models import Business
from trimops.kernel.clock import from_to, local_day
from trimops.kernel.scope import Scope
from visits.domain.kit.blade_kinds import BladeFault, BladeState
from visits.domain.kit.kit_sheet import full_name
from visits.domain.kit.read_quantity import seen_words
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.tonight import EveningJob, EveningTask, evening_title, in_order
from visits.models import Blade, StockMovement, Van
from visits.selectors.kit.blade_grinding import Grinding, VanGrinding, grinding_ahead
from visits.selectors.kit.dated_lot import DatedLot, dated_lots
from visits.selectors.kit.kit_forecast import models_in_use
from visits.selectors.kit.lots_left import LotsAt, lots_of
from visits.selectors.kit.order_list import OrderList, order_list
from visits.selectors.kit.stock_now import ItemStock, PlaceStock, stock_now
from visits.selectors.kit.van_check import VanCheck, van_check
from visits.selectors.kit.wash_log import left_unwashed

COUNT_AFTER = timedelta(days=90)


@dataclass(frozen=True)
class Tonight:
    """The tasks in their order, and for each van that goes out the day it goes out next."""

    tasks: list[EveningTask]
    vans: list[tuple[Van, date]]

    @property
    def title(self) -> str:
        return evening_title(self.tasks)


def tonight(business: Business, now: datetime) -> Tonight:
    """Of all vans in use. A number of queries that grows with the vans alone."""
    scope, today = Scope(business.pk), local_day(now, business.zone)
    vans = Van.objects.within(scope).filter(is_active=True).select_related("business")
    # Learned once for all that asks by it.
    models = models_in_use(scope)
    checks = [van_check(scope, van, None, today, models) for van in vans]
    grinding, stock = grinding_ahead(scope, business, now), stock_now(scope)
    lots = lots_of(scope, [each.consumable.pk for each in stock])
    tasks = [
        *(task for check in checks for task in _loading(check)),
        *_grinding(grinding),
        *_broken(scope),
        *_washing(scope, business, today),
        *_ordering(order_list(scope, today, models, stock, lots)),
        *_below_nought(stock),
        *_long_uncounted(scope, stock, now - COUNT_AFTER),
        *_dates(stock, lots, today),
    ]
    return Tonight(in_order(tasks), [(check.van, check.day) for check in checks if check.day])


def _loading(check: VanCheck) -> Iterator[EveningTask]:
    names = [row.name for row in check.to_load]
    if names and check.day:
        why = f"{check.cows} cows at {check.farms} farm{'' if check.farms == 1 else 's'} on {check.day:%A}"
        yield EveningTask(EveningJob.LOAD, check.van.name, "; ".join(names), why, check.van.pk, len(names))
    for text in check.cold:
        yield EveningTask(EveningJob.WARM, check.van.name, text, "", check.van.pk)


def _grinding(grinding: Grinding) -> Iterator[EveningTask]:
    for van in grinding.vans:
        day = van.first_grinding
        if day is not None and day == van.first_day:
            yield _edges(van, day, grinding.minutes_each)


def _edges(van: VanGrinding, day: date, minutes_each: float | None) -> EveningTask:
    blades = van.to_grind(day)
    minutes = f", about {round(minutes_each * len(blades))} min" if minutes_each else ""
    why = f"they may go dull at a cow on {day:%A}{minutes}"
    return EveningTask(
        EveningJob.GRIND,
        van.van.name,
        ", ".join(blade.name for blade in blades),
        why,
        van.van.pk,
        len(blades),
    )


def _broken(scope: Scope) -> Iterator[EveningTask]:
    """What may hurt somebody and is neither put right nor retired."""
    dangers = [fault.value for fault in BladeFault if fault.is_danger]
    rows = Blade.objects.within(scope).filter(state=BladeState.OUT_OF_USE.value, fault__in=dangers)
    for blade in rows.select_related("van"):
        what = f"{blade.get_fault_display().lower()}, in {blade.van.name if blade.van else 'the store'}"
        why = "take it out of the van; replace it, or say that it was put right"
        yield EveningTask(EveningJob.BROKEN, blade.name, what, why, blade.pk)


def _washing(scope: Scope, business: Business, today: date) -> Iterator[EveningTask]:
    since, _ = from_to(today, today, business.zone)
    for visit in left_unwashed(scope, since):
        van = visit.van.name if visit.van else "Crush"
        why = f"no wash-down is noted after {visit.farm.name}"
        yield EveningTask(EveningJob.WASH, van, "crush, knives and boots", why, visit.pk)


def _ordering(found: OrderList) -> Iterator[EveningTask]:
    for row in found.today:
        packs = f"{row.packs} pack{'' if row.packs == 1 else 's'}"
        yield EveningTask(EveningJob.ORDER, row.name, packs, row.why.rstrip("."), row.consumable.pk)


def _below_nought(stock: list[ItemStock]) -> Iterator[EveningTask]:
    why = "the ledger is below nought: more was used than it knew of"
    for item in stock:
        for each in item.places:
            if each.is_short:
                place = each.place
                yield EveningTask(
                    EveningJob.COUNT,
                    full_name(item.consumable.name, item.consumable.size),
                    place.name,
                    why,
                    place.pk,
                )


def _long_uncounted(scope: Scope, stock: list[ItemStock], since: datetime) -> Iterator[EveningTask]:
    """Places whose ledger goes further back than `since`, and of which nothing was counted after it."""
    counted = {each.place.pk for item in stock for each in item.places if _is_after(each, since)}
    rows = StockMovement.objects.within(scope).filter(at__lt=since).order_by()
    worked = set(rows.values_list("place_id", flat=True).distinct())
    places = {each.place.pk: each.place for item in stock for each in item.places if each.balance}
    for key in sorted(worked & places.keys() - counted):
        yield EveningTask(
            EveningJob.COUNT, places[key].name, "all of it", "not counted for 90 days or more", key
        )


def _is_after(each: PlaceStock, since: datetime) -> bool:
    return each.counted_at is not None and each.counted_at >= since


def _dates(stock: list[ItemStock], lots: Mapping[int, LotsAt], today: date) -> Iterator[EveningTask]:
    for item in stock:
        for lot in dated_lots(item, lots.get(item.consumable.pk, ()), today):
            if lot.is_past or lot.is_soon:
                yield _date(item, lot)


def _date(item: ItemStock, lot: DatedLot) -> EveningTask:
    amount = seen_words(lot.quantity, Unit(item.consumable.unit))
    what = f"{amount} in {lot.place.name}"
    why = f"{'past its date since' if lot.is_past else 'its date is'} {lot.expires_on:%-d %B %Y}"
    return EveningTask(
        EveningJob.DATE, full_name(item.consumable.name, item.consumable.size), what, why, item.consumable.pk
    )
