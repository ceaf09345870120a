"""Places where a job fits once one other job, promised to nobody, has moved to another place: best first."""

from collections.abc import Iterator
from dataclasses import replace

from visits.domain.planning.board import Board
from visits.domain.planning.offers.guest import Guest, board_with
from visits.domain.planning.offers.offer import Move, MoveOffer, Place, by_weight
from visits.domain.planning.offers.offers_in import offers_in
from visits.domain.planning.offers.standing_week import StandingWeek
from visits.domain.planning.problem import Job


def find_moves(standing: StandingWeek, job: Job, only: int | None = None) -> list[MoveOffer]:
    """Every place for `job` (as in `find_offers`) in a shift from which, or within which, one other job moves.

    A job that leaves its shift goes to its place of least weight elsewhere. Exact, as `find_offers` is; places that
    need no move are not among them. `only` asks for the moves of that job alone.
    """
    board, guest = board_with(standing.board, job)
    found: list[MoveOffer] = []
    for shift in board.homes[guest.at]:
        if only is None or only in standing.week[shift]:
            found += _moved_away(standing, board, guest, shift)
            found += _moved_within(standing, board, guest, shift)
    kept = [move for move in found if only is None or move.move.job == only]
    return sorted(kept, key=lambda each: by_weight(each.offer))


def _moved_away(standing: StandingWeek, board: Board, guest: Guest, shift: int) -> Iterator[MoveOffer]:
    """The new job in a shift that another one leaves."""
    stands = standing.figures(shift)
    for other in standing.movable(shift):
        for offer in offers_in(board, standing.without(shift, other), guest, stands):
            target = standing.elsewhere(shift, other)
            if target is None:
                break
            both = replace(offer, added=offer.added.plus(target.added))
            yield MoveOffer(both, Move(other, shift, target.place))


def _moved_within(standing: StandingWeek, board: Board, guest: Guest, shift: int) -> Iterator[MoveOffer]:
    """The new job in a shift in which another one changes its turn."""
    stands = standing.figures(shift)
    for order, other in standing.shuffled(shift).items():
        for offer in offers_in(board, standing.of_order(shift, order), guest, stands):
            turn = Place(shift, offer.place.order.index(other), offer.place.order)
            yield MoveOffer(offer, Move(other, shift, turn))
