"""The ledger of one consumable by the real services and tables; spoken to as `PlainLedger` is."""

from datetime import date
from decimal import Decimal
from uuid import uuid4

from tests.factories import make_consumable, make_house, make_van
from tests.visits.services.kit.stock_words import amount, word
from visits.domain.kit.stock_kinds import ConsumableKind, UseOf, WriteOffReason
from visits.models import StockLot, StockMovement, Visit
from visits.selectors.kit.ledger_lines import lots_of, movements_of
from visits.services.kit.book_uses import Booking, UseAt, book_uses, booked_uses
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.count_stock import count_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_place import place_of_van, store_of
from visits.services.kit.write_off_stock import write_off_stock

SLIPS = {"is_really_there": True}
"""Random dealings take more than is there."""


class Yard:
    """A business with a store and two vans, shared by many ledgers."""

    def __init__(self):
        self.house = make_house()
        vans = (self.house.van, make_van(self.house.business, self.house.trimmer, "Van 2"))
        found = [store_of(self.house.scope), *map(place_of_van, vans)]
        self.places = {place.pk: place for place in found}


class RealLedger:
    def __init__(self, yard):
        self.yard, self.house = yard, yard.house
        name = f"Glue {uuid4()}"
        self.item = make_consumable(
            self.house.business, name, ConsumableKind.GLUE, unit="ml", pack=Decimal(100)
        )
        self.places = list(yard.places)
        self.visits = {}

    @property
    def lots(self):
        return sorted(lots_of(self.house.scope, [self.item.pk])[self.item.pk], key=lambda lot: lot.id)

    def movements(self):
        rows = StockMovement.objects.within(self.house.scope).filter(consumable=self.item)
        return movements_of(rows)[self.item.pk]

    def source(self, number):
        return f"visit {self._visit(number).pk} wash"

    def buy(self, place, quantity, cost, expires_on, at):
        item = BoughtItem(self.item, quantity, cost, expires_on=expires_on)
        (line,) = buy_stock(place=self._place(place), bought=[item], word=self._word(at))
        return line.pk, line.lot_id

    def move(self, source, target, quantity, lot, at):
        way = Way(self._place(source), self._place(target))
        return move_stock(way=way, moved=[self._amount(quantity, lot)], word=self._word(at), **SLIPS)[0].pk

    def write_off(self, place, quantity, lot, at):
        words = {"because": WriteOffReason.BROKEN, "word": self._word(at), **SLIPS}
        return write_off_stock(place=self._place(place), gone=[self._amount(quantity, lot)], **words)[0].pk

    def count(self, place, quantity, at):
        count_stock(place=self._place(place), counted=[self._amount(quantity)], word=self._word(at))

    def use(self, source, wanted):
        visit = next(visit for number, visit in self.visits.items() if self.source(number) == source)
        uses = {UseAt(self.item.pk, place, at): quantity for (place, at), quantity in wanted.items()}
        before = {line.id for line in self.movements()}
        book_uses(
            booking=Booking(visit, UseOf.WASH, uses, visit.asked_at), booked=booked_uses(visit, UseOf.WASH)
        )
        new = [line for line in self.movements() if line.id not in before and line.source == source]
        return {(line.place, line.at): line.id for line in new}

    def _visit(self, number):
        if number not in self.visits:
            day = date(2026, 3, 2)
            at = self._word(None).noted_at
            words = {"reason": "routine", "state": "under_way", "asked_at": at, "changed_at": at}
            words |= {"due_from": day, "due_until": day, "head_count": 3, "expected_minutes": 30}
            self.visits[number] = Visit.objects.create(
                business=self.house.business, farm=self.house.farm, van=self.house.van, **words
            )
        return self.visits[number]

    def _amount(self, quantity, lot=None):
        return amount(self.item, quantity, lot and StockLot.objects.within(self.house.scope).get(pk=lot))

    def _word(self, at):
        return word(self.house, at=at)

    def _place(self, key):
        return self.yard.places[key]
