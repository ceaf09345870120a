"""A whole week by the client, from the farm to the payment: what another program would do, and no other way."""

from datetime import UTC, datetime, timedelta

import httpx
import pytest
from django.core import signals
from django.core.wsgi import get_wsgi_application
from django.db import close_old_connections

from tests.factories import House, make_house, make_prices
from tests.visits.api.phone import Phone, blocked, cow_content
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, givable, make_token
from trimops.client.client import Client
from trimops.client.refused import NotRead, Refused
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.services.think_week_plan import think_week_plan

SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)
WEEK = "2026-03-02"


@pytest.fixture
def clock(monkeypatch):
    """Sunday evening, until it is set on."""
    shown = [SUNDAY_EVENING]
    monkeypatch.setattr("trimops.web.scoped_api.timezone.now", lambda: shown[0])
    return shown


@pytest.fixture
def house(db, clock) -> House:
    found = make_house()
    make_prices(found.business)
    return found


@pytest.fixture
def _in_one_transaction():
    """Each request would close the connection that a test is on; Django's test client does the same."""
    ends = (signals.request_started, signals.request_finished)
    for end in ends:
        end.disconnect(close_old_connections)
    yield
    for end in ends:
        end.connect(close_old_connections)


@pytest.fixture
def client(house, clock, _in_one_transaction) -> Client:
    wish = TokenWish("Office program", givable(Role.OWNER), timedelta(days=30))
    _, text = make_token(membership=house.memberships[Role.OWNER], wish=wish, at=clock[0])
    http = httpx.Client(transport=httpx.WSGITransport(app=get_wsgi_application()))
    return Client("http://testserver", text, http=http)


def think(house, pk, at):
    """What a worker does meanwhile."""
    plan = WeekPlan.objects.within(house.scope).get(pk=pk)
    think_week_plan(week_plan=plan, limits=SolveLimits(iterations=20), at=at)


def test_a_week_from_the_farm_to_the_payment(client, house, clock):
    farm = client.add_farm(
        {
            "name": "Upper Croft",
            "latitude": "54.12",
            "longitude": "-2.31",
            "address": "Upper Croft, Dale",
            "country": "GB",
        }
    )
    cows = [client.add_cow(farm["id"], {"number": number}) for number in ("7", "8")]
    visit = client.ask_visit(
        {
            "farm": farm["id"],
            "reason": "routine",
            "due_from": WEEK,
            "due_until": "2026-03-13",
            "head_count": 2,
        }
    )

    plan = client.ask_plan(WEEK)
    think(house, plan["id"], clock[0])
    told = client.read_plan(plan["id"])
    assert [stop["visit"] for shift in told["shifts"] for stop in shift["stops"]] == [visit["id"]]
    client.accept_plan(plan["id"], {})
    assert client.confirm_visit(visit["id"])["state"] == "confirmed"

    clock[0] = datetime.fromisoformat(client.read_visit(visit["id"])["planned_start"])
    assert client.start_visit(visit["id"], {"checked": True})["state"] == "under_way"
    phone = Phone(None, visit["id"])
    for cow in cows:
        phone.write(cow_content(cow["id"], blocked()))
    sent = client.send_writings(visit["id"], phone.body())
    assert [answer["outcome"] for answer in sent["answers"]] == ["kept", "kept"]
    clock[0] += timedelta(hours=2)
    done = client.finish_visit(visit["id"], {"signed_by": "H. Manager", "washed_down": True})
    assert done["state"] == "finished"
    assert {trim["cow"] for trim in client.list_visit_trims(visit["id"])} == {cow["id"] for cow in cows}
    assert client.issue_report(visit["id"])["visit"] == visit["id"]

    draft = client.draft_visit(visit["id"])["invoice"]
    assert draft is not None
    issued = client.issue_draft(draft, {})
    assert client.read_invoice_pdf(issued["id"])[:5] == b"%PDF-"
    client.note_payment(
        {
            "farm": farm["id"],
            "received_on": clock[0].date().isoformat(),
            "amount": issued["payable"],
            "method": "bank",
            "shares": [{"invoice": issued["id"], "amount": issued["payable"]}],
        }
    )
    assert client.read_invoice(issued["id"])["is_open"] is False


def test_a_list_is_walked_page_by_page(client, house):
    for number in range(5):
        client.add_farm({"name": f"Farm {number}", "latitude": "54.1", "longitude": "-2.3"})
    names = [farm["name"] for farm in client.list_farms(limit=2)]
    assert names == sorted(names)
    assert len(names) == 6


def test_a_row_is_changed_only_as_it_was_read_here(client, house):
    with pytest.raises(NotRead):
        client.change_farm(house.farm.pk, {"herd_size": 80})
    client.read_farm(house.farm.pk)
    assert client.change_farm(house.farm.pk, {"herd_size": 80})["herd_size"] == 80
    assert client.change_farm(house.farm.pk, {"herd_size": 81})["herd_size"] == 81
    client.change_farm(house.farm.pk, {"herd_size": 5}, match="*")
    client.tags[f"/farms/{house.farm.pk}/"] = '"older"'
    with pytest.raises(Refused) as refused:
        client.change_farm(house.farm.pk, {"herd_size": 82})
    assert (refused.value.status, refused.value.code) == (412, "stale")


def test_a_refusal_says_what_to_mend(client):
    with pytest.raises(Refused) as refused:
        client.add_farm({"name": "Upper", "latitude": "95.0", "longitude": "-2.3"})
    assert (refused.value.status, refused.value.code) == (422, "cannot_be_meant")
    assert refused.value.faults[0][0] == "latitude"
