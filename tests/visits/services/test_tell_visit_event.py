"""What another program hears of a visit, step by step."""

import json
from datetime import timedelta

import pytest

from tests.factories import NOON, TUESDAY_TEN, finish, make_house, make_van, planned, wanted
from tests.trimops.outbox.webhooks import make_webhook
from trimops.outbox.models import Outgoing
from visits.domain.visit_states import VisitState
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.issue_report import issue_report
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.start_visit import start_visit
from visits.services.visit_change import keep_change

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    house = make_house()
    make_webhook(house)
    return house


def heard(house):
    rows = Outgoing.objects.within(house.scope).filter(channel="webhook").order_by("id")
    return [json.loads(row.body) for row in rows]


def test_a_visit_from_its_hour_to_its_report(house):
    visit = planned(house.farm, house.van)
    confirm_visit(visit=visit, at=NOON, by=house.owner)
    visit.refresh_from_db()
    start_visit(visit=visit, checked=True, at=TUESDAY_TEN, by=house.trimmer)
    done = finish(visit, house.trimmer)
    issue_report(visit=done, at=TUESDAY_TEN + timedelta(hours=5), by=house.trimmer)
    assert [told["type"] for told in heard(house)] == [
        *("visit.planned", "visit.confirmed", "visit.started", "visit.finished", "report.issued")
    ]


def test_another_hour_or_van_is_a_move_and_the_same_is_no_news(house):
    visit = planned(house.farm, house.van)

    def put(start, van):
        row = visit.locked()
        row.van, row.planned_start, row.planned_finish = van, start, start + timedelta(hours=2)
        keep_change(row, VisitState.PLANNED, at=NOON + timedelta(minutes=len(heard(house))), by=house.owner)

    put(TUESDAY_TEN, house.van)
    before = len(heard(house))
    put(TUESDAY_TEN, house.van)
    assert len(heard(house)) == before
    put(TUESDAY_TEN + timedelta(hours=1), house.van)
    put(TUESDAY_TEN + timedelta(hours=1), make_van(house.business, house.trimmer, "Second van"))
    moved = heard(house)[before:]
    assert [told["type"] for told in moved] == ["visit.moved"] * 2
    assert moved[0]["data"]["starts"] == "2026-03-03T11:00:00Z"
    assert moved[1]["data"]["van"]["name"] == "Second van"


def test_a_visit_that_does_not_come_about(house):
    visit = planned(house.farm, house.van)
    put_off_visit(visit=visit, because="Rain", at=NOON, by=house.owner)
    visit.refresh_from_db()
    plan_visit(visit=visit, van=house.van, start=TUESDAY_TEN, at=NOON + timedelta(hours=1), by=house.owner)
    visit.refresh_from_db()
    call_off_visit(visit=visit, because="Sold up", at=NOON + timedelta(hours=2), by=house.owner)
    told = heard(house)
    assert [each["type"] for each in told] == [
        *("visit.planned", "visit.put_off", "visit.planned", "visit.called_off")
    ]
    assert told[1]["data"]["starts"] is None


def test_the_news_holds_keys_and_names_and_nothing_about_people(house):
    visit = planned(house.farm, house.van, note="Ring 07700 900123")
    (told,) = heard(house)
    assert told["data"] == {
        "visit": visit.pk,
        "state": "planned",
        "reason": visit.reason,
        "starts": "2026-03-03T10:00:00Z",
        "ends": told["data"]["ends"],
        "cows": visit.head_count,
        "van": {"id": house.van.pk, "name": house.van.name},
        "farm": {"id": house.farm.pk, "name": house.farm.name},
    }
    assert all(person.name not in json.dumps(told) for person in (house.owner, house.trimmer))


def test_a_wish_is_no_news_yet(house):
    wanted(house.farm)
    assert heard(house) == []
