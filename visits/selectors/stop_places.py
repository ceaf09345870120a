"""Every place that a stop of the plan could have, with its price in words: what is shown before it is dropped."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from trimops.web.templatetags.figures import money as money_words
from trimops.web.templatetags.moments import clock
from trimops.web.templatetags.moments import day as day_words
from visits.domain.planning.board import Board
from visits.domain.planning.measures import instant
from visits.domain.planning.moves.price_moves import Moves, Price, price_moves
from visits.domain.planning.moves.say_why_not import say_price, say_why_not
from visits.domain.planning.moves.why_not import Rule, WhyNot
from visits.models import Van, Visit
from visits.selectors.standing_plan import StandingPlan, shift_parts

MUST_BE_PLANNED = "It must be planned: it is urgent, confirmed or locked."
KEEPS_ITS_HOUR = "It keeps its hour: unlock it, or put it off, before you move it."


class PlanDoesNotHold(RuleBroken):
    """What was promised since cannot be kept together with this plan."""

    code = "plan_does_not_hold"


@dataclass(frozen=True)
class PlaceView:
    """One place: `price` in words and the hours, or `why` it cannot be. `after` is the farm before it, "" if first."""

    shift: str
    position: int
    day: date
    van: str
    after: str
    is_here: bool
    start: datetime | None
    finish: datetime | None
    price: str
    money: float
    why: str


@dataclass(frozen=True)
class StopPlaces:
    """`out` says what is saved by leaving the stop out, "" where that cannot be; `out_why` says why then.

    `has_begun`: the stop is on a day that has begun, and stays there.
    """

    visit: Visit
    here: PlaceView | None
    places: list[PlaceView]
    out: str
    out_why: str
    has_begun: bool = False

    @property
    def best_by_shift(self) -> list[PlaceView]:
        """The cheapest place elsewhere in each shift that has one, cheapest first."""
        best: dict[str, PlaceView] = {}
        for place in sorted(self.possible, key=lambda p: p.money):
            best.setdefault(place.shift, place)
        return list(best.values())

    @property
    def possible(self) -> list[PlaceView]:
        return [place for place in self.places if not place.why and not place.is_here]

    def beside(self, step: int) -> PlaceView | None:
        """The nearest place that can be, earlier (-1) or later (1) on the same day."""
        here = self.here
        if here is None:
            return None
        same = [p for p in self.possible if p.shift == here.shift and (p.position - here.position) * step > 0]
        return min(same, key=lambda p: abs(p.position - here.position), default=None)


def stop_places(standing: StandingPlan, visit: Visit, business: Business) -> StopPlaces:
    """PlanDoesNotHold where promises made since have broken the plan; one query."""
    job = standing.job_of(visit.pk)
    try:
        moves = price_moves(standing.board, standing.week, job, standing.closed)
    except ValueError:
        raise PlanDoesNotHold(
            "An hour was promised or locked since that does not fit this plan: plan the week again."
        ) from None
    vans = {van.pk: van.name for van in Van.objects.within(Scope(business.pk))}
    views = list(_views(standing, moves, vans, business))
    here = next((view for view in views if view.is_here), None)
    begun = moves.here is not None and not views
    return StopPlaces(visit, here, views, *_out(moves, standing.board, business), begun)


def _views(
    standing: StandingPlan, moves: Moves, vans: dict[int, str], business: Business
) -> Iterator[PlaceView]:
    names = standing.names()
    problem = standing.board.problem
    for place in moves.places:
        van, day = shift_parts(problem.shifts[place.shift].id)
        others = [job for job in standing.week[place.shift] if job != moves.job]
        price, spans = place.price, (place.start, place.finish)
        start, finish = (instant(at, problem.zone) if price else None for at in spans)
        why = place.why_not
        yield PlaceView(
            shift=problem.shifts[place.shift].id,
            position=place.position,
            day=day,
            van=vans.get(van, ""),
            after=names[others[place.position - 1]] if place.position else "",
            is_here=(place.shift, place.position) == moves.here,
            start=start,
            finish=finish,
            price=price_words(price, business) if price else "",
            money=price.money if price else 0.0,
            why=why_words(why, standing, moves.job) if why else "",
        )


def why_words(why: WhyNot, standing: StandingPlan, job: int) -> str:
    """A stop that keeps its hour is asked to be let go first, whatever else would stand in the way."""
    if standing.board.problem.jobs[job].fixed is not None and why.rule is not Rule.BEGUN:
        return KEEPS_ITS_HOUR
    return say_why_not(why, standing.board, standing.names(), standing.kept)


def price_words(price: Price, business: Business) -> str:
    """ "12 min more, 8.4 km less, £4.20 more" """
    minor = round(abs(price.money))
    return say_price(price, money_words(Decimal(minor) / 100, business.currency) if minor else "")


def _out(moves: Moves, board: Board, business: Business) -> tuple[str, str]:
    may_go = board.problem.jobs[moves.job].leave_out_cost is not None
    if moves.here is None:
        return "", "It is left out already."
    if not moves.places:
        return "", "This day has begun."
    if moves.out is None:
        return "", say_why_not(WhyNot(Rule.LEFT_BEHIND), board, ()) if may_go else MUST_BE_PLANNED
    return price_words(moves.out, business), ""


def place_at(places: StopPlaces, shift: str, position: int) -> PlaceView | None:
    """The place so named, if there is one."""
    return next((p for p in places.places if (p.shift, p.position) == (shift, position)), None)


def move_words(places: StopPlaces, place: PlaceView | None) -> str:
    """What is done to the stop, in a sentence; no place takes it out of the week."""
    name = places.visit.farm.name
    if place is None:
        return f"{name} taken out of the week"
    put = "put in" if places.here is None else "moved"
    return f"{name} {put}: {day_words(place.day)}, {clock(place.start)}, {place.van}"
