"""The lines of one consumable gone through in the order of time; it can be put away and gone on with later."""

from collections.abc import Iterable
from decimal import Decimal

from visits.domain.kit.hundredths import from_hundredths
from visits.domain.kit.lot_shelf import LotShelf, Parts
from visits.domain.kit.pack_costs import Pack, PackCosts
from visits.domain.kit.stock_events import StockEvent, stock_events
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_lines import Cost, Lot, LotLeft, Movement, Shortfall, Standing

LEAVING = frozenset({MovementKind.USED, MovementKind.COUNTED, MovementKind.WRITTEN_OFF})
"""What changes how much the business has, other than by buying."""


class StockFold:
    """Plain values all through, so it can be pickled. Each place uses its lots by their dates (`LotShelf`)."""

    def __init__(self) -> None:
        self._shelf = LotShelf()
        self._places: set[int] = set()
        self._packs: list[Pack] = []
        self._gone = 0
        self._short: list[Shortfall] = []
        self._doubts: list[Shortfall] = []

    def add(self, movements: Iterable[Movement], lots: Iterable[Lot]) -> list[StockEvent]:
        """Go on with lines in any order, all dated after those added before, and the lots they may name; their events.

        A moment must not be split: what happened in it is settled within it (`stock_events`).
        """
        lines = list(movements)
        events = stock_events(lines)
        self._places.update(line.place for line in lines)
        self._shelf.know(lots)
        for event in events:
            self._shelve(event)
            if event.kind is MovementKind.BOUGHT:
                self._packs.append(Pack(event.change, event.cost))
            elif event.kind in LEAVING:
                self._gone -= event.change
        return events

    def packs(self) -> PackCosts:
        """What was bought so far."""
        return PackCosts(self._packs)

    def standing(self) -> Standing:
        """Where it stands after all lines added."""
        packs, places = self.packs(), sorted(self._places)
        left = from_hundredths(packs.units - self._gone)
        known = packs.are_known(self._gone, packs.units)
        return Standing(
            balances={place: self._balance(place) for place in places},
            lots_left={place: _left(self._shelf.at(place)) for place in places},
            paid=from_hundredths(packs.paid),
            value=Cost(left, from_hundredths(packs.left(self._gone)), known),
            shortfalls=tuple(self._short),
            lots_in_doubt=tuple(self._doubts),
        )

    def _shelve(self, event: StockEvent) -> None:
        shelf, place, quantity = self._shelf, event.place, abs(event.change)
        if event.change > 0:
            if event.kind in LEAVING:
                shelf.bring_back(place, quantity)
            else:
                shelf.put(place, event.lot, quantity)
            return
        if event.kind in (MovementKind.USED, MovementKind.COUNTED):
            missing = shelf.use(place, quantity)
        else:
            parts, missing = shelf.take(place, quantity, event.lot)
            self._doubt(event, parts)
            if event.target is not None:
                for lot, part in (*parts, (event.lot, missing)):
                    if part:
                        shelf.put(event.target, lot, part)
        if missing:
            self._short.append(Shortfall(place, event.at, from_hundredths(missing)))

    def _doubt(self, event: StockEvent, parts: Parts) -> None:
        others = sum(part for lot, part in parts if lot != event.lot)
        if event.lot is not None and others:
            self._doubts.append(Shortfall(event.place, event.at, from_hundredths(others), event.lot))

    def _balance(self, place: int) -> Decimal:
        return from_hundredths(sum(part for _, part in self._shelf.at(place)) - self._shelf.owed[place])


def _left(parts: Parts) -> tuple[LotLeft, ...]:
    return tuple(LotLeft(lot, from_hundredths(part)) for lot, part in parts)
