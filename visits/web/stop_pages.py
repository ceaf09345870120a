"""One stop of a plan: where else it could be and at what price, moving it, locking it."""

from datetime import date
from decimal import Decimal

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase, JsonResponse
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.web.scoped_page import ScopedPage
from trimops.web.templatetags.figures import money
from trimops.web.templatetags.moments import clock, day
from visits.models import PlanLock, Visit, WeekPlan, WeekPlanState
from visits.selectors.plan_holds import LOCKABLE
from visits.selectors.plan_reasons import reasons_of
from visits.selectors.standing_plan import standing_plan
from visits.selectors.stop_places import (
    PlaceView,
    PlanDoesNotHold,
    StopPlaces,
    move_words,
    place_at,
    stop_places,
)
from visits.services.lock_stop import LockOn, lock_stop
from visits.services.move_stop import PlanWasChanged, StopMove, move_stop
from visits.services.unlock_stop import unlock_stop
from visits.templatetags.plan_reasons import why_of
from visits.web.week_pages import week_address

OPEN = (WeekPlanState.PROPOSED, WeekPlanState.ACCEPTED)


class StopOfPlan(ScopedPage):
    """A page of one stop: finds the plan, the visit, and the places that it could have."""

    does = Action.PLAN_WEEKS

    def places(self, pk: int, visit_pk: int) -> tuple[WeekPlan, StopPlaces]:
        plan, visit = self.fetch(WeekPlan, pk, "business"), self.fetch(Visit, visit_pk, "farm")
        if plan.plan is None:
            raise NotFound("There is no plan yet.")
        return plan, stop_places(standing_plan(plan, self.now), visit, self.seat.business)


class StopPage(StopOfPlan):
    """Every place with its price and a button, without dragging and without a script."""

    template = "visits/week_stop.html"

    def get(self, request: HttpRequest, pk: int, visit_pk: int) -> HttpResponse:
        plan, places = self.places(pk, visit_pk)
        lock = PlanLock.objects.within(self.scope).filter(visit=places.visit).first()
        return self.show(
            {
                "plan": plan,
                "places": places,
                "visit": places.visit,
                "farm": places.visit.farm,
                "lock": lock,
                "why": why_of(reasons_of(plan), places.visit),
                "may_lock": places.visit.visit_state in LOCKABLE and places.here is not None,
                "is_open": plan.state in OPEN,
                "earlier": places.beside(-1),
                "later": places.beside(1),
                "back_url": week_address(plan, places.here.day if places.here else None),
            }
        )


class StopPlacesData(StopOfPlan):
    """The same as figures: asked once, when the stop is picked up."""

    def get(self, request: HttpRequest, pk: int, visit_pk: int) -> JsonResponse:
        try:
            _, places = self.places(pk, visit_pk)
        except PlanDoesNotHold as fault:
            return JsonResponse({"fault": fault.message}, status=409)
        currency = self.seat.business.currency
        return JsonResponse(
            {
                "name": places.visit.farm.name,
                "places": [_as_data(place, currency) for place in sorted(places.places, key=_by_row)],
                "out": {"price": places.out, "why": places.out_why},
            }
        )


def _by_row(place: PlaceView) -> tuple[date, str, int]:
    """In the order of the board's rows."""
    return place.day, place.shift, place.position


def _as_data(place: PlaceView, currency: str) -> dict[str, object]:
    hours = f", {clock(place.start)} to {clock(place.finish)}" if place.start else ""
    return {
        "shift": place.shift,
        "position": place.position,
        "day": place.day.isoformat(),
        "here": place.is_here,
        "where": f"{day(place.day)}, {place.van}, {_beside(place)}{hours}",
        "price": place.price,
        "money": place.money,
        "short": _signed(place, currency) if place.price else "",
        "why": place.why,
    }


def _signed(place: PlaceView, currency: str) -> str:
    """ "+£3.54", for where there is little room."""
    amount = Decimal(round(place.money)) / 100
    return f"+{money(amount, currency)}" if amount > 0 else money(amount, currency)


def _beside(place: PlaceView) -> str:
    return f"after {place.after}" if place.after else "first stop"


class MoveStopPage(StopOfPlan):
    """The stop is dropped: `shift` and `position` name its place; no shift takes it out of the week."""

    def post(self, request: HttpRequest, pk: int, visit_pk: int) -> HttpResponseBase:
        plan, places = self.places(pk, visit_pk)
        if plan.state not in OPEN:
            raise PlanWasChanged("This plan was set aside: look at the week again.")
        shift, position = request.POST.get("shift", ""), _number(request.POST.get("position", "0"))
        place = place_at(places, shift, position) if shift else None
        words = move_words(places, place)
        move = StopMove(places.visit, shift, position, words)
        version = move_stop(week_plan=plan, move=move, at=self.now, by=self.seat.user)
        messages.success(request, f"{words}: {place.price if place else places.out}.")
        shown = place or places.here
        return redirect(week_address(version, shown.day if shown else None))


def _number(text: str) -> int:
    return int(text) if text.isdecimal() and len(text) < 4 else -1


class LockStopPage(ScopedPage):
    """Lock the stop to its day or its hour, or take the lock off (`on` = day, hour, off)."""

    does = Action.PLAN_WEEKS

    def post(self, request: HttpRequest, pk: int, visit_pk: int) -> HttpResponseBase:
        plan, visit = self.fetch(WeekPlan, pk, "business"), self.fetch(Visit, visit_pk, "farm")
        on = request.POST.get("on", "")
        if on in list(LockOn):
            lock = lock_stop(week_plan=plan, visit=visit, on=LockOn(on), at=self.now, by=self.seat.user)
            where = f"{day(lock.day)}, {clock(lock.start)}" if lock.start else day(lock.day)
            messages.success(request, f"{visit.farm.name} is locked to {where}, {lock.van.name}.")
        else:
            unlock_stop(visit=visit)
            messages.success(request, f"{visit.farm.name} may be moved again.")
        return redirect("week_stop", plan.pk, visit.pk)
