"""When can you come: everything that can be said to a farm that rings up, from the diary as it stands."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from math import inf

from trimops.kernel.clock import local_day, monday_of
from visits.domain.planning.offers.find_moves import find_moves
from visits.domain.planning.offers.find_offers import find_offers
from visits.domain.planning.offers.find_swaps import find_askings, find_put_offs, why_not
from visits.domain.planning.offers.offer import MoveOffer, by_weight
from visits.domain.planning_figures import PlanningFigures
from visits.models import Van
from visits.selectors.asked_visit import Asked
from visits.selectors.business_figures import figures_of
from visits.selectors.diary_stops import DiaryStop
from visits.selectors.offer_lines import LineMaker, OfferLine
from visits.selectors.offer_week import Spot, freed_jobs, offer_week

WEEKS = 2
MOST_WEEKS = 3
MOST_MOVES = 6
MOST_SWAPS = 3


@dataclass(frozen=True)
class FarmOffers:
    """Best first each: what fits as the week stands, and with one unconfirmed visit moved. Only where neither comes in
    time: with a confirmed visit moved, its farm willing (`askings`), or one put off to another week (`put_offs`), and
    why nothing fits (`why`, by week). `broken` are days whose round breaks a rule as it stands."""

    fits: Sequence[OfferLine]
    moves: Sequence[OfferLine]
    askings: Sequence[OfferLine]
    put_offs: Sequence[OfferLine]
    why: Sequence[tuple[date, str]]
    broken: Sequence[tuple[Van, date]]

    @property
    def is_in_time(self) -> bool:
        """Whether something fits, with or without a move, before it is late."""
        return any(line.late == 0 for line in (*self.fits, *self.moves))


def farm_offers(asked: Asked, now: datetime, weeks: int = WEEKS, *, swaps: bool = True) -> FarmOffers:
    """For this week from `now` on, today's rounds as far as they have come, and the next one; if nothing fits into
    them as they stand, for the one after as well. Without `swaps` nobody looks at what would have to give way."""
    first = monday_of(max(asked.due_from, local_day(now, asked.farm.business.zone)))
    vans = Van.objects.within(asked.farm.scope).in_bulk()
    makers: list[LineMaker] = []
    fits: list[OfferLine] = []
    while len(makers) < weeks or (not fits and len(makers) < MOST_WEEKS):
        week = offer_week(asked, first + timedelta(weeks=len(makers)), now)
        makers.append(LineMaker(week, vans, asked.due_until))
        fits = sorted([*fits, *_fits(makers[-1])], key=_by_weight)
    moves = _move_lines(makers, fits, figures_of(asked.farm.scope).planning)
    broken = [
        (vans[spot.van], spot.day)
        for maker in makers
        for spot in map(maker.week.spot_at, maker.week.standing.broken)
    ]
    found = FarmOffers(fits, moves, (), (), (), broken)
    return found if found.is_in_time or not swaps else _with_swaps(found, asked, makers)


def _by_weight(line: OfferLine) -> tuple[float, datetime]:
    return round(line.weight, 2), line.first


def _fits(maker: LineMaker) -> Iterator[OfferLine]:
    week = maker.week
    return map(maker.line, find_offers(week.standing, week.job) if week.job else ())


def _move_lines(
    makers: Sequence[LineMaker], fits: Sequence[OfferLine], planning: PlanningFigures
) -> list[OfferLine]:
    """The best of each van, day and visit that moves, the price of change counted; not where that van has room that
    day for no more anyway."""
    room: dict[Spot, float] = {}
    for line in fits:
        room.setdefault(Spot(line.van.pk, line.day), line.weight)
    best: dict[tuple[Spot, int, int], tuple[LineMaker, MoveOffer]] = {}
    for number, maker in enumerate(makers):
        week = maker.week
        for found in find_moves(week.standing, week.job) if week.job else ():
            spot = week.spot(found.offer.place)
            weighed = _with_price(found, week.stops[found.move.job], planning)
            if weighed.offer.added.weight < room.get(spot, inf):
                best.setdefault((spot, number, found.move.job), (maker, weighed))
    chosen = sorted(best.values(), key=lambda each: by_weight(each[1].offer))[:MOST_MOVES]
    return [maker.move_line(found) for maker, found in chosen]


def _with_price(found: MoveOffer, stop: DiaryStop, planning: PlanningFigures) -> MoveOffer:
    """The move as it weighs with what a change costs; more where the farm has been told its hour. No money is paid."""
    told = stop.visit is not None and stop.visit.hour_told is not None
    price = planning.change_visit + (planning.change_told_hour if told else 0.0)
    added = replace(found.offer.added, weight=found.offer.added.weight + price)
    return replace(found, offer=replace(found.offer, added=added))


def _with_swaps(found: FarmOffers, asked: Asked, makers: Sequence[LineMaker]) -> FarmOffers:
    """The same with what would have to give way in the weeks that still come in time."""
    askings: list[OfferLine] = []
    put_offs: list[OfferLine] = []
    why: list[tuple[date, str]] = []
    for maker in makers:
        week, job = maker.week, maker.week.job
        if week.monday > asked.due_until:
            continue
        if job is None:
            why.append((week.monday, "The farm has no hours left in this week that are long enough."))
            continue
        if not find_offers(week.standing, job):
            why.append((week.monday, why_not(week.standing, job)))
        freed = freed_jobs(week)
        found_askings = _one_each(find_askings(week.standing, job, freed))
        askings += [maker.move_line(each, freed[each.move.job]) for each in found_askings]
        put_offs += map(maker.put_off_line, find_put_offs(week.standing, job)[:MOST_SWAPS])
    in_time = [
        sorted((line for line in lines if not line.late), key=_by_weight) for lines in (askings, put_offs)
    ]
    return replace(found, askings=in_time[0][:MOST_SWAPS], put_offs=in_time[1][:MOST_SWAPS], why=why)


def _one_each(found: Sequence[MoveOffer]) -> list[MoveOffer]:
    """The best for each job that moves, the first few."""
    best: dict[int, MoveOffer] = {}
    for each in found:
        best.setdefault(each.move.job, each)
    return list(best.values())[: 2 * MOST_SWAPS]
