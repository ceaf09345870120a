"""A visit is confirmed, an hour held and taken, a plan accepted, by several at the same moment."""

from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from tests.factories import NOON, TUESDAY_TEN, make_farm, planned
from tests.services.races.crowd import ROUNDS, Person, by_service, crowd, fault_of, one_wins
from tests.visits.services.by_hand import hand_week
from tests.visits.services.offers import SUNDAY_EVENING, hold, offers, place_of, urgent
from trimops.accounts.roles import Role
from visits.models import HeldHour, Visit, VisitEvent, WeekPlan
from visits.services.accept_week_plan import accept_week_plan
from visits.services.confirm_visit import confirm_visit
from visits.services.hold_offer import OfferToHold, hold_offer
from visits.services.take_offer import take_offer

pytestmark = pytest.mark.services
MOVED = "cannot become"


def test_a_visit_is_confirmed_once_by_page_api_and_service(house, people):
    visits = [planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=n)) for n in range(ROUNDS)]

    def hands(visit):
        at = f"/visits/{visit.pk}/confirm/"
        return [
            people[Role.OWNER].page(reverse("visit_confirm", args=[visit.pk])),
            people[Role.OFFICE].api("POST", at, Idempotency_Key=f"office-{visit.pk}"),
            by_service(lambda: confirm_visit(visit=visit, at=timezone.now(), by=house.owner)),
            people[Role.TRIMMER].api("POST", at, Idempotency_Key=f"trimmer-{visit.pk}"),
        ]

    told = crowd([hands(visit) for visit in visits])
    assert fault_of(told) == []
    for answers, visit in zip(told, visits, strict=True):
        one_wins(answers, "visit_cannot_move", MOVED)
        events = VisitEvent.objects.within(house.scope).filter(visit=visit, after="confirmed")
        assert events.count() == 1


def test_of_four_farms_one_holds_the_hour_and_of_four_hands_one_takes_it(house):
    wish = urgent(head_count=30, due_until=SUNDAY_EVENING.date() + timedelta(days=28))
    farms = [house.farm, *[make_farm(house.business, f"Farm {n}", by=house.owner) for n in range(3)]]
    found = offers(house.farm, wish, weeks=4).fits
    lines = list({line.day: line for line in found}.values())[:ROUNDS]
    assert len(lines) >= min(3, ROUNDS)

    def holding(line, farm):
        offer = OfferToHold(wish, place_of(line))
        return by_service(lambda: hold_offer(farm=farm, offer=offer, at=SUNDAY_EVENING, by=house.office))

    told = crowd([[holding(line, farm) for farm in farms] for line in lines])
    assert fault_of(told) == []
    held = [int(one_wins(answers, "offer_is_gone").body) for answers in told]
    rows = [HeldHour.objects.within(house.scope).select_related("farm").get(pk=pk) for pk in held]
    assert HeldHour.objects.within(house.scope).count() == len(lines)

    def taking(row):
        return by_service(lambda: take_offer(held=row, at=SUNDAY_EVENING, by=house.office))

    told = crowd([[taking(row) for _ in range(4)] for row in rows])
    assert fault_of(told) == []
    for answers in told:
        one_wins(answers, "hour_is_not_held")
    made = Visit.objects.within(house.scope)
    assert [visit.state for visit in made] == ["confirmed"] * len(rows)


def test_an_hour_is_held_by_the_api_or_by_the_service_never_by_both(house, monkeypatch):
    monkeypatch.setattr("trimops.web.scoped_api.timezone.now", lambda: SUNDAY_EVENING)
    wish = urgent(head_count=30)
    other = make_farm(house.business, "High Croft", by=house.owner)
    line = offers(house.farm, wish).fits[0]
    place = {"van": house.van.pk, "first": line.first.isoformat(), "last": line.last.isoformat()}
    word = {
        **{"reason": "urgent", "asked_by": "The herd manager", "head_count": 30, "place": place},
        **{"due_from": str(wish.due_from), "due_until": str(wish.due_until)},
    }
    persons = [Person(house.office), Person(house.owner), Person(house.trimmer)]
    acts = [
        person.api("POST", f"/farms/{farm.pk}/held-hours/", word, Idempotency_Key=f"key-{n}")
        for n, (person, farm) in enumerate(zip(persons, (house.farm, other, house.farm), strict=True))
    ]
    (told,) = crowd([[*acts, by_service(lambda: hold(house, line, other, wish=wish))]])
    assert fault_of([told]) == []
    one_wins(told, "offer_is_gone")
    assert HeldHour.objects.within(house.scope).count() == 1


def test_a_plan_is_accepted_once(transactional_db):
    week = hand_week()
    house, row = week.house, week.plan
    plans = []
    for _ in range(ROUNDS):
        row.pk, row._state.adding = None, True
        row.save()
        plans.append(WeekPlan.objects.within(house.scope).get(pk=row.pk))
    owner, trimmer = Person(house.owner), Person(house.trimmer)

    def hands(plan):
        at = f"/plans/{plan.pk}/accept/"
        return [
            owner.page(reverse("week_plan_accept", args=[plan.pk])),
            owner.api("POST", at, {}, Idempotency_Key=f"owner-{plan.pk}"),
            trimmer.api("POST", at, {}, Idempotency_Key=f"trimmer-{plan.pk}"),
            by_service(lambda: accept_week_plan(week_plan=plan, at=NOON, by=house.owner)),
        ]

    told = crowd([hands(plan) for plan in plans])
    assert fault_of(told) == []
    for answers in told:
        one_wins(answers, "plan_is_stale", "not open for acceptance")
    states = [plan.state for plan in WeekPlan.objects.within(house.scope).order_by("pk")]
    assert states.count("accepted") == 1
    assert {visit.state for visit in Visit.objects.within(house.scope)} == {"planned"}
