"""Which lots lie where: the oldest date is used first."""

import sys
from collections import defaultdict
from collections.abc import Iterable
from datetime import date

from visits.domain.kit.stock_lines import Lot

UNKNOWN = None
"""The lot of stock whose number nobody knows: used after all that have one."""

Parts = list[tuple[int | None, int]]
"""Lot and quantity, in hundredths of the unit."""


_Turn = tuple[date, date, int]


def _turn(lot: Lot) -> _Turn:
    """The oldest date first; what has no date after all that have one, what was bought first before the rest."""
    return lot.expires_on or date.max, lot.bought_on, lot.id


class LotShelf:
    """The lots of one consumable at all places, in hundredths of the unit. None of them is ever below nought: what was
    taken beyond them is `owed`, and the next that comes to the place is understood to be what was taken.
    """

    def __init__(self, lots: Iterable[Lot] = ()) -> None:
        self._turn: dict[int | None, _Turn] = {UNKNOWN: (date.max, date.max, sys.maxsize)}
        self.know(lots)
        self._lots: defaultdict[int, dict[int | None, int]] = defaultdict(dict)
        self._taken: defaultdict[int, Parts] = defaultdict(list)
        self.owed: defaultdict[int, int] = defaultdict(int)

    def know(self, lots: Iterable[Lot]) -> None:
        """These lots may come from now on."""
        self._turn |= {lot.id: _turn(lot) for lot in lots}

    def at(self, place: int) -> Parts:
        """What lies there, in order of use."""
        lots = self._lots[place]
        return [(lot, lots[lot]) for lot in sorted(lots, key=self._turn.__getitem__)]

    def put(self, place: int, lot: int | None, quantity: int) -> None:
        """So much of a lot came to the place; what it owes is taken from that."""
        paid = min(quantity, self.owed[place])
        if paid:
            self.owed[place] -= paid
            self._remember(place, lot, paid)
        if quantity > paid:
            lots = self._lots[place]
            lots[lot] = lots.get(lot, 0) + quantity - paid

    def take(self, place: int, quantity: int, lot: int | None = None) -> tuple[Parts, int]:
        """Take from the named lot if there is one, then from the oldest. What was taken, and how much was not there."""
        lots, parts, wanted = self._lots[place], [], quantity
        order = list(lots)
        if len(order) > 1:
            order.sort(key=self._turn.__getitem__)
            if lot is not None and lot in lots:
                order.remove(lot)
                order.insert(0, lot)
        for name in order:
            part = min(lots[name], wanted)
            parts.append((name, part))
            wanted -= part
            if part == lots[name]:
                del lots[name]
            else:
                lots[name] -= part
            if not wanted:
                break
        self.owed[place] += wanted
        return parts, wanted

    def use(self, place: int, quantity: int) -> int:
        """Take what may come back: a use, or what a count found missing. How much was not there."""
        parts, short = self.take(place, quantity)
        for lot, part in parts:
            self._remember(place, lot, part)
        return short

    def bring_back(self, place: int, quantity: int) -> None:
        """More is there than was believed: first nothing is owed, then the lots last taken come back, then unknown."""
        paid = min(quantity, self.owed[place])
        self.owed[place] -= paid
        left, taken, lots = quantity - paid, self._taken[place], self._lots[place]
        while left and taken:
            lot, part = taken.pop()
            back = min(part, left)
            if part > back:
                taken.append((lot, part - back))
            lots[lot] = lots.get(lot, 0) + back
            left -= back
        if left:
            lots[UNKNOWN] = lots.get(UNKNOWN, 0) + left

    def _remember(self, place: int, lot: int | None, quantity: int) -> None:
        taken = self._taken[place]
        if taken and taken[-1][0] == lot:
            taken[-1] = (lot, taken[-1][1] + quantity)
        else:
            taken.append((lot, quantity))
