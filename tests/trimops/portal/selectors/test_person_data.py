"""What is kept of one person, as they are given it."""

import json

import pytest
from allauth.usersessions.models import UserSession

from farms.models import Contact
from tests.factories import (
    NOON,
    PASSWORD,
    blocked_foot,
    make_farm,
    make_house,
    planned,
    put_down,
    under_way,
    wanted,
)
from trimops.accounts.roles import Role
from trimops.accounts.services.accept_invitation import accept_invitation
from trimops.accounts.services.invite_person import Guest, invite_person
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.services.put_out import Message, put_out
from trimops.portal.selectors.person_data import contact_files, person_files
from trimops.watch.doing import Doing, done_by
from visits.services.visit_change import add_event


def files_of(house, role):
    return dict(person_files(house.memberships[role], NOON))


def mail(house, address, body="A word for you", secret=""):
    message = Message(
        channel=Channel.MAIL, topic=Topic.EVENING, address=address, subject="s", body=body, secret=secret
    )
    put_out(business_id=house.business.pk, message=message, at=NOON)


def test_account_place_messages_and_each_line_that_names_them(house):
    put_down(under_way(house.farm, house.van), house.cow, blocked_foot())
    mail(house, house.trimmer.email, secret="https://trimops.example/people/come-in/abc/")
    files = files_of(house, Role.TRIMMER)
    (account,) = json.loads(files["account.json"])
    assert (account["email"], account["name"]) == (house.trimmer.email, house.trimmer.name)
    assert json.loads(files["membership.json"])[0]["role"] == "trimmer"
    assert json.loads(files["messages to them.json"])[0]["body"] == "A word for you"
    (trim,) = json.loads(files["trims.json"])
    assert trim["named_as"] == ["recorded_by"]
    assert json.loads(files["vans.json"])[0]["named_as"] == ["trimmer"]
    assert house.business.name.encode() in files["read me.txt"]


def test_nothing_in_it_opens_anything(house):
    mail(house, house.trimmer.email, secret="https://trimops.example/people/come-in/abc/")
    whole = b"".join(files_of(house, Role.TRIMMER).values())
    assert b"come-in" not in whole
    assert house.trimmer.password.encode() not in whole
    for word in (b"secret", b'password"', b"token_key", b"digest", b"sha256"):
        assert word + b'":' not in whole


def test_another_persons_lines_and_another_business_are_not_in_it(house):
    other = make_house("Elm & Oak")
    put_down(under_way(other.farm, other.van), other.cow, blocked_foot())
    whole = b"".join(files_of(house, Role.OFFICE).values())
    assert b"Elm & Oak" not in whole
    assert house.trimmer.email.encode() not in whole


@pytest.mark.parametrize("has_come", [False, True])
def test_the_owner_is_told_no_sign_ins_of_who_has_a_place_elsewhere(house, has_come):
    far = make_house("Elm & Oak")
    guest = Guest(house.office.email, "x", Role.OFFICE)
    asked = invite_person(business=far.business, guest=guest, at=NOON, by=far.owner)
    if has_come:
        asked = accept_invitation(membership=asked, password=PASSWORD, at=NOON)
    UserSession.objects.create(user=house.office, session_key="s", ip="203.0.113.7", user_agent="a phone")
    assert b"203.0.113.7" not in b"".join(dict(person_files(asked, NOON)).values())
    (account,) = json.loads(dict(person_files(asked, NOON))["account.json"])
    assert set(account) == {"id", "name", "email"}
    assert b"203.0.113.7" in b"".join(dict(person_files(asked, NOON, is_asked_by_self=True)).values())


def test_the_owner_is_told_the_sign_ins_of_who_works_here_alone(house):
    UserSession.objects.create(user=house.office, session_key="s", ip="203.0.113.7", user_agent="a phone")
    assert b"203.0.113.7" in b"".join(files_of(house, Role.OFFICE).values())


def test_somebody_of_a_farm_is_told_nothing_of_other_farms_that_their_hour_moved(house):
    theirs, other = wanted(house.farm), make_farm(house.business, "High Croft", by=house.owner)
    moved = planned(other, house.van)
    with done_by(Doing(by=house.client.pk)):
        moved.note = "the gate's code is 4711"
        moved.save()
    for visit in (theirs, moved):
        add_event(visit, before="", at=NOON, by=house.client, note="makes room, High Croft was rung")
    files = files_of(house, Role.FARM)
    whole = b"".join(files.values()).decode()
    assert "4711" not in whole
    assert "High Croft" not in whole
    assert {row["visit_id"] for row in json.loads(files["visit events.json"])} == {theirs.pk}


def test_large_tables_come_in_parts(house, monkeypatch):
    monkeypatch.setattr("trimops.portal.selectors.person_rows.AT_ONCE", 1)
    visit = under_way(house.farm, house.van)
    for _ in range(5):
        mail(house, "somebody@example.invalid")
    put_down(visit, house.cow, blocked_foot())
    files = files_of(house, Role.TRIMMER)
    rows = [row for name in files if name.startswith("visit events") for row in json.loads(files[name])]
    assert len(rows) == len({row["id"] for row in rows}) == 2
    assert "visit events 2.json" in files


@pytest.fixture
def contact(house):
    return Contact.objects.create(
        business=house.business,
        farm=house.farm,
        name="A Herd Manager",
        part="Herd manager",
        email="herd@farm.example",
    )


def test_a_person_at_a_farm_gets_what_went_to_them(house, contact):
    mail(house, contact.email)
    mail(house, "other@farm.example", body="For another")
    files = dict(contact_files(contact, NOON))
    assert json.loads(files["contact.json"])[0]["name"] == "A Herd Manager"
    (message,) = json.loads(files["messages to them.json"])
    assert message["address"] == contact.email
