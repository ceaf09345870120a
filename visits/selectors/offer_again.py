"""One place that was offered, looked at again: does it still hold, and at which hours exactly."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from trimops.kernel.clock import local_day, monday_of
from visits.domain.planning.board import Board
from visits.domain.planning.measures import PER_MINUTE, tick
from visits.domain.planning.offers.find_moves import find_moves
from visits.domain.planning.offers.find_offers import find_offers
from visits.domain.planning.offers.guest import Guest, board_with
from visits.domain.planning.offers.offer import Move, Offer, Place
from visits.domain.planning.offers.settle import settle
from visits.domain.planning.plan import PlannedShift
from visits.models import HeldHour, Visit
from visits.selectors.asked_visit import Asked
from visits.selectors.offer_week import OfferWeek, Spot, offer_week, van_of_shift

FIVE = 5 * PER_MINUTE


@dataclass(frozen=True)
class AskedPlace:
    """What was offered: a van, the first and the last start told, and the visit that moves for it, with where to."""

    van: int
    first: datetime
    last: datetime
    moved: int | None = None
    moved_to: Spot | None = None


@dataclass(frozen=True)
class NewHour:
    """A visit that gets another van or hour."""

    visit: Visit
    van: int
    start: datetime


@dataclass(frozen=True)
class Standing:
    """The offer as it holds now: the span that is left of it, the hour in it, and every visit that gets another."""

    first: datetime
    last: datetime
    start: datetime
    others: tuple[NewHour, ...]


def offer_again(
    asked: Asked, place: AskedPlace, now: datetime, ignore: HeldHour | None = None
) -> Standing | None:
    """The offer if some start of its span is still good, else None. `ignore` is a held hour that counts as not held.

    As few other hours change as can be; of the starts that are left it takes one on five full minutes if it can.
    """
    monday = monday_of(local_day(place.first, asked.farm.business.zone))
    week = offer_week(asked, monday, now, ignore=ignore)
    found = _same_place(week, place)
    if found is None or week.job is None:
        return None
    offer, move = found
    board, guest = board_with(week.standing.board, week.job)
    span = max(offer.first, tick(place.first)), min(offer.last, tick(place.last))
    stood = {job: start for job, start in week.stood.items() if move is None or job != move.job}
    rounds = [_settled(board, guest, offer.place, span, stood)]
    if move is not None and move.to.shift != offer.place.shift:
        rounds.append(settle(board, move.to, {}, stood))
    known = [each for each in rounds if each is not None]
    return _standing(week, span, known) if len(known) == len(rounds) else None


def _same_place(week: OfferWeek, place: AskedPlace) -> tuple[Offer, Move | None] | None:
    """The offer in that round that leaves most of the span, with the move that it needs."""
    if week.job is None:
        return None
    found: list[tuple[Offer, Move | None]]
    if place.moved is None:
        found = [(offer, None) for offer in find_offers(week.standing, week.job)]
    else:
        job = week.job_of(place.moved)
        moves = [] if job is None else find_moves(week.standing, week.job, only=job)
        found = [(each.offer, each.move) for each in moves if _goes_to(week, each.move, place)]
    told = Spot(place.van, local_day(place.first, week.zone))
    kept = [(_left_of(offer, place), offer, move) for offer, move in found if week.spot(offer.place) == told]
    kept = [each for each in kept if each[0] >= 0]
    return max(kept, key=lambda each: (each[0], -each[1].added.weight))[1:] if kept else None


def _goes_to(week: OfferWeek, move: Move, place: AskedPlace) -> bool:
    return place.moved_to is None or week.spot(move.to) == place.moved_to


def _left_of(offer: Offer, place: AskedPlace) -> int:
    """Deciseconds of the span told that the offer still covers; below 0 where it misses it."""
    return min(offer.last, tick(place.last)) - max(offer.first, tick(place.first))


def _settled(
    board: Board, guest: Guest, place: Place, span: tuple[int, int], stood: Mapping[int, int]
) -> PlannedShift | None:
    """The round with the job on five full minutes where that moves nobody else, else at its best."""
    found = settle(board, place, {guest.at: span}, stood)
    if found is None:
        return None
    start = next(stop.start for stop in found.stops if stop.job == guest.job.id)
    even = -(-start // FIVE) * FIVE
    if even == start or even > span[1]:
        return found
    again = settle(board, place, {guest.at: (even, even)}, stood)
    names = {board.problem.jobs[job].id: at for job, at in stood.items()}
    return again if again and _changed(again, names) <= _changed(found, names) else found


def _changed(found: PlannedShift, names: Mapping[str, int]) -> int:
    return sum(names.get(stop.job, stop.start) != stop.start for stop in found.stops)


def _standing(week: OfferWeek, span: tuple[int, int], rounds: Sequence[PlannedShift]) -> Standing:
    stops = {stop.job: stop for stop in week.stops}
    start, others = week.at(span[0]), []
    for found in rounds:
        van = van_of_shift(found.id)
        for planned in found.stops:
            stop, hour = stops.get(planned.job), week.at(planned.start)
            if stop is None:
                start = hour
            elif stop.visit and not stop.is_promised and (stop.visit.van_id, stop.start) != (van, hour):
                others.append(NewHour(stop.visit, van, hour))
    return Standing(week.at(span[0]), week.at(span[1]), start, tuple(others))
