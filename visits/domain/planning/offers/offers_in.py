"""The offers within one round as it stands."""

from collections.abc import Iterator
from math import inf

from visits.domain.planning.board import Board
from visits.domain.planning.offers.guest import Guest
from visits.domain.planning.offers.offer import Offer, Place
from visits.domain.planning.offers.order_figures import OrderFigures
from visits.domain.planning.offers.priced import priced
from visits.domain.planning.offers.room import rooms


def offers_in(
    board: Board, figures: OrderFigures, guest: Guest, stood: OrderFigures | None = None
) -> Iterator[Offer]:
    """Every span of every place for `guest` in the round of `figures`, against that round or how it `stood` before.

    None where that one breaks a rule already. `board` must know the guest.
    """
    before = stood or figures
    if before.cost == inf:
        return
    for at in range(len(figures.order) + 1):
        found = rooms(figures, guest, at)
        place = Place(figures.shift_at, at, (*figures.order[:at], guest.at, *figures.order[at:]))
        for room in found:
            yield Offer(place, room.first, room.last, priced(board, before, figures, place, guest, room))
