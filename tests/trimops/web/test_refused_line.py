"""Whatever is refused leaves a line for who inquires, without the address that was asked for."""

import logging
from datetime import timedelta

import pytest
from django.test import Client
from django.utils import timezone

from tests.factories import make_house
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, make_token
from trimops.kernel.secret_link import new_secret


@pytest.fixture
def told(caplog):
    caplog.set_level(logging.INFO, logger="trimops.security")
    return lambda: [record.told for record in caplog.records if record.name == "trimops.security"]


@pytest.mark.django_db
def test_a_part_that_may_not_is_told_with_person_business_route_and_place(told):
    house = make_house()
    client = Client(REMOTE_ADDR="203.0.113.4")
    client.force_login(house.trimmer)
    assert client.get("/invoices/").status_code == 403
    assert told()[-1] == {
        "event": "refused",
        "by": house.trimmer.pk,
        "seen_from": "203.0.113.4",
        "status": 403,
        "method": "GET",
        "route": "invoice_list",
        "business": house.business.pk,
        "role": "trimmer",
    }


@pytest.mark.django_db
def test_a_token_that_is_none_is_told_without_it(told):
    text = "trimops_" + "0a" * 32
    answer = Client().get("/api/v1/farms/", headers={"Authorization": f"Bearer {text}"})
    assert answer.status_code == 401
    assert (told()[-1]["event"], told()[-1]["status"]) == ("refused", 401)
    assert text not in str(told())


@pytest.mark.django_db
def test_an_address_with_a_wrong_key_is_told_without_the_key(told):
    secret = new_secret()
    assert Client().get(f"/bill/{secret}/").status_code == 404
    assert told()[-1]["event"] == "wrong_key"
    assert secret not in str(told())


@pytest.mark.django_db
def test_a_form_without_the_mark_of_its_page_is_told(told):
    client = Client(enforce_csrf_checks=True)
    client.post("/account/login/", {"login": "x@x.example", "password": "x"})
    assert {line["event"] for line in told()} == {"form_refused", "refused"}


@pytest.mark.django_db
def test_a_row_that_is_not_theirs_is_told_of_who_is_signed_in(told):
    house, other = make_house(), make_house("Fell & Beck")
    client = Client()
    client.force_login(house.owner)
    assert client.get(f"/farms/{other.farm.pk}/").status_code == 404
    assert (told()[-1]["event"], told()[-1]["route"], told()[-1]["by"]) == (
        "not_there",
        "farm",
        house.owner.pk,
    )


@pytest.mark.django_db
def test_what_goes_well_is_no_line(told):
    house = make_house()
    client = Client()
    client.force_login(house.owner)
    assert client.get("/invoices/").status_code == 200
    assert client.get("/nowhere/").status_code == 404
    assert told() == []


@pytest.mark.django_db
def test_a_program_that_may_not_is_told_by_the_number_of_its_token(told):
    house = make_house()
    wish = TokenWish("Theirs", {Action.SEE_FARMS}, timedelta(days=9))
    token, text = make_token(membership=house.memberships[Role.OWNER], wish=wish, at=timezone.now())
    answer = Client().get("/api/v1/invoices/", headers={"Authorization": f"Bearer {text}"})
    assert answer.status_code == 403
    assert (told()[-1]["program"], told()[-1]["by"]) == (token.pk, house.owner.pk)
    assert text not in str(told())


@pytest.mark.django_db
def test_input_that_is_refused_and_a_rule_that_says_no_are_told_without_what_was_sent(told):
    house = make_house()
    client = Client()
    client.force_login(house.owner)
    words = {"name": "", "timezone": "Ashby/Green"}
    assert client.post("/people/business/", words).status_code in (400, 404)
    assert client.post("/week/2026-03-02/plan/").status_code == 409
    headers = {"Idempotency-Key": "a-key-of-ours-0001"}
    body = {"name": 7, "secret_word": "buttercup"}
    assert client.post("/api/v1/farms/", body, "application/json", headers=headers).status_code == 400
    lines = [(line["event"], line["status"], line["route"]) for line in told()]
    assert lines[-2:] == [("rule_refused", 409, "plan_week"), ("input_refused", 400, "api_farms")]
    assert told()[-1]["by"] == house.owner.pk
    assert "Ashby" not in str(told())
    assert "buttercup" not in str(told())
