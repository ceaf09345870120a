"""Where nothing fits: what would have to give way. Two kinds of swap, each best first, and the plain reason."""

from collections.abc import Mapping
from copy import copy
from dataclasses import dataclass, replace
from math import inf

from visits.domain.planning.board import Board
from visits.domain.planning.left_out import left_out
from visits.domain.planning.offers.find_moves import find_moves
from visits.domain.planning.offers.find_offers import find_offers
from visits.domain.planning.offers.guest import board_with
from visits.domain.planning.offers.offer import Added, Move, MoveOffer, Offer, by_weight
from visits.domain.planning.offers.offers_in import offers_in
from visits.domain.planning.offers.standing_week import StandingWeek
from visits.domain.planning.openings import openings
from visits.domain.planning.problem import Job


@dataclass(frozen=True, slots=True)
class PutOff:
    """`offer` holds if `job`, promised to nobody, waits for another week; the price of that is in its weight."""

    offer: Offer
    job: int


def find_put_offs(standing: StandingWeek, job: Job) -> list[PutOff]:
    """Places that `job` can have if another one leaves the week; jobs that must be planned never do."""
    board, guest = board_with(standing.board, job)
    found = []
    for shift in board.homes[guest.at]:
        for other in standing.movable(shift):
            price = board.problem.jobs[other].leave_out_cost
            if price is None:
                continue
            for offer in offers_in(board, standing.without(shift, other), guest, standing.figures(shift)):
                added = replace(offer.added, weight=offer.added.weight + price)
                found.append(PutOff(replace(offer, added=added), other))
    return sorted(found, key=lambda each: by_weight(each.offer))


def find_askings(standing: StandingWeek, job: Job, freed: Mapping[int, Job]) -> list[MoveOffer]:
    """Places that `job` can have if one promised job is given another hour of this week, its farm willing.

    `freed` holds promised jobs by index as they would be without the promise, with the windows of their farms.
    """
    found: list[MoveOffer] = []
    for promised, free in freed.items():
        freer = StandingWeek(freed_board(standing.board, promised, free), standing.week)
        shift = next((at for at, order in enumerate(standing.week) if promised in order), None)
        if shift is None or standing.figures(shift).cost == inf:
            continue
        found += [_against(standing, freer, each) for each in _with_one_free(freer, job, promised, shift)]
    return sorted(found, key=lambda each: by_weight(each.offer))


def _with_one_free(freer: StandingWeek, job: Job, promised: int, shift: int) -> list[MoveOffer]:
    """The promised one at another hour in its turn, at another turn, or elsewhere."""
    same_turn = [
        MoveOffer(offer, Move(promised, shift, replace(offer.place, at=offer.place.order.index(promised))))
        for offer in find_offers(freer, job)
        if offer.place.shift == shift
    ]
    return same_turn + find_moves(freer, job, only=promised)


def _against(standing: StandingWeek, freer: StandingWeek, found: MoveOffer) -> MoveOffer:
    """What it adds to the week as it stands, not to one in which the promise was already lifted."""
    free, bound = (week.figures(found.offer.place.shift) for week in (freer, standing))
    lifted = Added(free.work - bound.work, 0, free.money - bound.money, free.cost - bound.cost)
    return replace(found, offer=replace(found.offer, added=found.offer.added.plus(lifted)))


def why_not(standing: StandingWeek, job: Job) -> str:
    """The reason, as one sentence, why `job` fits nowhere into the week as it stands."""
    board, guest = board_with(standing.board, job)
    return left_out(board, tuple(standing.week), guest.at).detail


def freed_board(board: Board, promised: int, free: Job) -> Board:
    """The board with that job free of its promise."""
    jobs = board.problem.jobs
    freer = copy(board)
    freer.problem = replace(board.problem, jobs=(*jobs[:promised], free, *jobs[promised + 1 :]))
    freer.known = {}
    shifts = range(len(board.problem.shifts))
    opened = [openings(freer.problem, shift, free) for shift in shifts]
    freer.openings = [
        [*row[:promised], opened[shift], *row[promised + 1 :]] for shift, row in enumerate(board.openings)
    ]
    homes = [shift for shift in shifts if opened[shift]]
    freer.homes = [*board.homes[:promised], homes, *board.homes[promised + 1 :]]
    return freer
