"""Offers in the words of the diary: which van, which day, between which hours, what it adds, who moves."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from decimal import Decimal

from trimops.kernel.money import round_money
from visits.domain.planning.measures import PER_MINUTE
from visits.domain.planning.offers.find_swaps import PutOff, freed_board
from visits.domain.planning.offers.guest import board_with
from visits.domain.planning.offers.offer import Move, MoveOffer, Offer
from visits.domain.planning.offers.settle import settle
from visits.domain.planning.problem import Job
from visits.models import Van, Visit
from visits.selectors.offer_week import OfferWeek, Spot

FIVE = 5 * PER_MINUTE


@dataclass(frozen=True)
class MoveLine:
    """A visit that would move: its farm knows of the hour it has if it is `told`."""

    visit: Visit
    van: Van
    start: datetime
    to_van: Van
    to_start: datetime | None

    @property
    def told(self) -> bool:
        return self.visit.hour_told is not None or self.visit.state == "confirmed"


@dataclass(frozen=True)
class OfferLine:
    """Arrive between `first` and `last` with `van`; what that adds: minutes of work, metres, money (major units).

    `after` names the farm that the van comes from, empty for the first stop. `late` counts the days after the last day
    on which it was due; `moved` says who moves first, if anybody, and `to` where; `put_off` waits for another week.
    """

    van: Van
    first: datetime
    last: datetime
    minutes: int
    metres: int
    money: Decimal
    weight: float
    late: int
    after: str = ""
    moved: MoveLine | None = None
    to: Spot | None = None
    put_off: Visit | None = None

    @property
    def day(self) -> date:
        return self.first.date()


@dataclass(frozen=True)
class LineMaker:
    """Makes the lines of one week."""

    week: OfferWeek
    vans: Mapping[int, Van]
    due_until: date

    def line(self, offer: Offer) -> OfferLine:
        """The span to the five minutes within it, to the minute or as it is where it is too narrow for that."""
        first, last = _rounded(offer.first, offer.last)
        begins = self.week.at(first)
        # because: with a visit that changes its turn, the job is not where it was put in
        order, asked = offer.place.order, len(self.week.stops)
        at = order.index(asked)
        return OfferLine(
            van=self.vans[self.week.spot(offer.place).van],
            first=begins,
            last=self.week.at(last),
            minutes=round(offer.added.work / PER_MINUTE),
            metres=offer.added.metres,
            money=round_money(Decimal(str(offer.added.money)) / 100),
            weight=offer.added.weight,
            late=max(0, (begins.date() - self.due_until).days),
            after=self.week.stops[order[at - 1]].name if at else "",
        )

    def move_line(self, found: MoveOffer, freed: Job | None = None) -> OfferLine:
        """The same with the visit that moves, and the hour that it gets as the week stands.

        `freed` is a promised visit without its promise.
        """
        week, move = self.week, found.move
        stop = week.stops[move.job]
        if stop.visit is None:
            raise ValueError("an hour that is held does not move")
        spot = week.spot(move.to)
        hour = MoveLine(
            visit=stop.visit,
            van=self.vans[week.spot_of(move.job).van],
            start=stop.start,
            to_van=self.vans[spot.van],
            to_start=self._new_hour(found.offer, move, freed),
        )
        return replace(self.line(found.offer), moved=hour, to=spot)

    def put_off_line(self, found: PutOff) -> OfferLine:
        """The same with the visit that waits for another week."""
        return replace(self.line(found.offer), put_off=self.week.stops[found.job].visit)

    def _new_hour(self, offer: Offer, move: Move, freed: Job | None) -> datetime | None:
        week = self.week
        if week.job is None:
            return None
        standing = week.standing.board
        board, guest = board_with(freed_board(standing, move.job, freed) if freed else standing, week.job)
        spans = {guest.at: (offer.first, offer.last)} if move.to.shift == offer.place.shift else {}
        stood = {job: start for job, start in week.stood.items() if job != move.job}
        found = settle(board, move.to, spans, stood)
        name = board.problem.jobs[move.job].id
        starts = [stop.start for stop in found.stops if stop.job == name] if found else []
        return week.at(starts[0]) if starts else None


def _rounded(first: int, last: int) -> tuple[int, int]:
    for grain in (FIVE, PER_MINUTE):
        begins, ends = -(-first // grain) * grain, last // grain * grain
        if begins <= ends:
            return begins, ends
    return first, last
