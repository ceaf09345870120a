"""What a job in some room of a round adds to the round as it stood before."""

from visits.domain.planning.board import Board
from visits.domain.planning.offers.guest import Guest
from visits.domain.planning.offers.held_board import held_board
from visits.domain.planning.offers.offer import Added, Place
from visits.domain.planning.offers.order_figures import OrderFigures
from visits.domain.planning.offers.room import Room


def priced(
    board: Board, stood: OrderFigures, beside: OrderFigures, place: Place, guest: Guest, room: Room
) -> Added:
    """`place.order` against the round as it `stood`; `beside` is the round that the room was found in.

    `board` must know the guest; the round must have stood without breaking a rule.
    """
    work, late = _work_and_late(board, beside, place, guest, room)
    shift = beside.shift
    metres = board.metres(place.shift, place.order)
    money = work * shift.cost_per_hour / 36_000 + metres / 1000 * shift.cost_per_km + shift.cost_fixed
    return Added(work - stood.work, metres - stood.metres, money - stood.money, money + late - stood.cost)


def _work_and_late(
    board: Board, beside: OrderFigures, place: Place, guest: Guest, room: Room
) -> tuple[int, float]:
    if beside.late is not None:
        return room.work, room.worth - room.work * beside.shift.cost_per_hour / 36_000 + beside.late
    held = held_board(board, place.shift, {guest.at: (room.first, room.last)})
    timing = held.timing(place.shift, place.order)
    return (timing.back - timing.leave, timing.late) if timing else (room.work, 0.0)
