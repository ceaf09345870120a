"""Farms, payers, milkings, people of a farm: what is special of each address."""

import pytest

from farms.models import Contact, FarmAccess, Milking, Payer
from farms.services.give_farm_rights import give_farm_rights
from tests.factories import make_farm, make_house
from tests.visits.api.caller import code_of
from trimops.accounts.roles import FarmRight

FARM = {"name": "Upper", "latitude": "54.100000", "longitude": "-2.300000"}


def test_farms_are_found_by_payer_and_hygiene_and_herd(office, house):
    payer = office.post("/payers/", {"name": "The Estate", "payment_days": 14}).json()["id"]
    made = office.post("/farms/", {**FARM, "payer": payer, "hygiene_level": 2, "herd_size": 900})
    assert (made.status_code, made.json()["payer"], made.json()["hygiene_level"]) == (201, payer, 2)
    for query in (f"payer={payer}", "hygiene_level=2", "herd_size_from=900"):
        assert [row["name"] for row in office.get(f"/farms/?{query}").json()["items"]] == ["Upper"], query


def test_a_farm_may_not_be_paid_for_by_a_payer_of_another_business(office):
    foreign = Payer.objects.create(business=make_house("Other").business, name="Theirs")
    refused = office.post("/farms/", {**FARM, "payer": foreign.pk})
    assert (code_of(refused), refused.json()["faults"][0]["field"]) == ((422, "cannot_be_meant"), "payer")


def test_two_farms_of_one_name_are_refused(office, house):
    assert office.post("/farms/", {**FARM, "name": house.farm.name}).status_code == 422


def test_a_farm_client_sees_their_farm_without_what_is_not_for_them(client_of_farm, office, house):
    make_farm(house.business, "High Croft", by=house.owner)
    payer = office.post("/payers/", {"name": "The Estate"}).json()["id"]
    said = {"payer": payer, "access_notes": "Dog", "vat_number": "GB1", "hygiene_reason": "Seen"}
    assert office.patch(f"/farms/{house.farm.pk}/", said).status_code == 200
    (row,) = client_of_farm.get("/farms/").json()["items"]
    assert [row[name] for name in said] == [None, None, None, None]
    give_farm_rights(access=FarmAccess.objects.within(house.scope).get(), rights={FarmRight.HANDS_OVER})
    row = client_of_farm.get(f"/farms/{house.farm.pk}/").json()
    assert [row[name] for name in said] == [None, "Dog", "GB1", "Seen"]
    assert client_of_farm.get(f"/farms/?payer={payer}").json()["items"] == []
    assert client_of_farm.patch(f"/farms/{house.farm.pk}/", {"herd_size": 1}).status_code == 403


def test_milkings_are_set_as_a_whole(office, house):
    at = f"/farms/{house.farm.pk}/milkings/"
    lines = [{"weekday": day, "starts": "05:30", "minutes": 90} for day in (0, 6)]
    changed = office.patch(at, {"milkings": lines}, match=office.get(at)["ETag"])
    assert (changed.status_code, changed.json()["milkings"]) == (200, lines)
    assert Milking.objects.within(house.scope).filter(farm=house.farm).count() == 2
    assert code_of(office.patch(at, {"milkings": [lines[0], lines[0]]})) == (422, "cannot_be_meant")
    assert office.patch(at, {"milkings": [{**lines[0], "starts": "24:00"}]}).status_code == 400
    assert office.patch(at, {"milkings": []}).json()["milkings"] == []


def test_people_of_a_farm_come_and_go(office, house, client_of_farm):
    people = f"/farms/{house.farm.pk}/contacts/"
    made = office.post(people, {"name": "H. Manager", "part": "Herd manager", "email": "h@croft.example"})
    assert made.status_code == 201
    at = made["Location"].removeprefix("/api/v1")
    assert office.get(at).json() == made.json() | {"farm": house.farm.pk}
    assert office.patch(at, {"told_by": "sms"}).status_code == 422
    assert office.patch(at, {"told_by": "mail"}).json()["told_by"] == "mail"
    assert len(office.get(f"{people}?gets_reports=false").json()["items"]) == 1
    assert client_of_farm.get(people).status_code == 403
    assert office.delete(at, match='"stale"').status_code == 412
    assert office.delete(at).status_code == 204
    assert not Contact.objects.within(house.scope).exists()


@pytest.mark.parametrize("what", ["contacts", "milkings", "cows", "herd-lists", "clients", "vet-passes"])
def test_what_hangs_on_a_farm_of_another_business_is_not_there(office, what, db):
    theirs = make_house("Other").farm.pk
    assert office.get(f"/farms/{theirs}/{what}/").status_code == 404
    if what != "milkings":
        assert office.post(f"/farms/{theirs}/{what}/", {"nonsense": 1}).status_code == 404


def test_payers_are_for_the_desk_and_each_has_its_own_name(office, client_of_farm):
    at = office.post("/payers/", {"name": "The Estate"})["Location"].removeprefix("/api/v1")
    assert office.patch(at, {"payment_days": 30}).json()["payment_days"] == 30
    assert office.post("/payers/", {"name": "The Estate"}).status_code == 422
    assert client_of_farm.get("/payers/").status_code == 403
