"""People of a farm, the vet's link, the wish to be erased, the data taken out."""

import io
import zipfile
from datetime import timedelta

import pytest
from django.utils import timezone

from farms.models import Erasure, FarmAccess, VetPass
from farms.selectors.vet_passes import is_still_given, with_standing
from farms.services.give_farm_rights import give_farm_rights
from tests.factories import make_farm
from tests.visits.api.caller import code_of
from trimops.accounts.roles import FarmRight
from trimops.api.models import RepeatableCall
from trimops.outbox.models import Outgoing

PASS = {"vet_name": "A. Vet", "days": 30, "shows_letters": True}


@pytest.fixture
def at_farm(house):
    return f"/farms/{house.farm.pk}"


def give(house, *rights):
    return give_farm_rights(access=FarmAccess.objects.within(house.scope).get(), rights=set(rights))


def test_somebody_is_asked_in_by_mail_given_rights_and_let_go(office, at_farm, house):
    word = {"name": "A. Farmer", "email": "farmer@croft.example", "rights": ["sees_money"]}
    made = office.post(f"{at_farm}/clients/", word)
    told = made.json()
    assert (made.status_code, told["email"], told["joined_at"], told["rights"]) == (
        *(201, "farmer@croft.example", None),
        ["sees_money"],
    )
    assert Outgoing.objects.within(house.scope).get().address == "farmer@croft.example"
    at = f"/clients/{told['id']}/"
    assert office.patch(at, {"rights": []}, match=made["ETag"]).json()["rights"] == []
    assert office.patch(at, {"rights": ["everything"]}).status_code == 400
    assert len(office.get(f"{at_farm}/clients/").json()["items"]) == 2
    assert office.delete(at).status_code == 204
    assert len(office.get(f"{at_farm}/clients/").json()["items"]) == 1


def test_who_works_here_is_not_asked_in(office, at_farm, house):
    word = {"name": "T.", "email": house.trimmer.email}
    assert code_of(office.post(f"{at_farm}/clients/", word)) == (409, "works_here_already")


def test_the_vets_link_is_shown_once_and_kept_nowhere(office, at_farm, house):
    made, again = (office.post(f"{at_farm}/vet-passes/", PASS, key="k1") for _ in range(2))
    assert (made.status_code, made["Cache-Control"]) == (201, "no-store")
    link = made.json()["link"]
    assert link.startswith("http://testserver/")
    assert office.client.get(link).status_code == 200
    assert again.json() == {**made.json(), "link": None}
    secret = link.rstrip("/").rpartition("/")[2]
    assert secret not in str(list(RepeatableCall.objects.within(house.scope).values()))
    closed = office.post(f"/vet-passes/{made.json()['id']}/close/")
    assert (closed.json()["stands"], office.client.get(link).status_code) == (False, 404)


def test_a_link_that_would_show_nothing_is_refused(office, at_farm):
    assert code_of(office.post(f"{at_farm}/vet-passes/", {"vet_name": "V", "days": 9})) == (
        409,
        "pass_makes_no_sense",
    )
    assert office.post(f"{at_farm}/vet-passes/", {**PASS, "days": 367}).status_code == 400


def test_a_farm_client_gives_the_vet_a_link_only_with_that_right(client_of_farm, at_farm, house, office):
    give(house)
    assert client_of_farm.post(f"{at_farm}/vet-passes/", PASS).status_code == 403
    give(house, FarmRight.HANDS_OVER)
    assert client_of_farm.post(f"{at_farm}/vet-passes/", PASS).status_code == 201
    other = make_farm(house.business, "High", by=house.owner)
    assert client_of_farm.post(f"/farms/{other.pk}/vet-passes/", PASS).status_code == 404
    (row,) = office.get(f"{at_farm}/vet-passes/").json()["items"]
    assert row["stands"]
    give(house)
    assert not office.get(f"{at_farm}/vet-passes/").json()["items"][0]["stands"]


def test_whether_links_stand_is_told_of_all_at_once_as_of_each(office, client_of_farm, at_farm, house):
    give(house, FarmRight.HANDS_OVER)
    for caller in (office, client_of_farm, client_of_farm):
        caller.post(f"{at_farm}/vet-passes/", PASS)
    newest = VetPass.objects.within(house.scope).order_by("-pk").first()
    office.post(f"/vet-passes/{newest.pk}/close/")
    for rights in ((FarmRight.HANDS_OVER,), ()):
        give(house, *rights)
        for at in (timezone.now(), timezone.now() + timedelta(days=31)):
            rows = VetPass.objects.within(house.scope)
            told = {row.pk: row.stands for row in with_standing(rows, house.scope, at)}
            assert told == {row.pk: row.is_open(at) and is_still_given(row) for row in rows}


def test_a_farm_asks_to_be_erased_and_takes_it_back(client_of_farm, office, at_farm, house):
    give(house, FarmRight.HANDS_OVER)
    at = f"{at_farm}/erasures/"
    assert office.post(at, {}).status_code == 403
    asked = client_of_farm.post(at, {"note": "We stop milking."})
    assert (asked.status_code, asked.json()["done_at"]) == (201, None)
    assert code_of(client_of_farm.post(at, {})) == (409, "erasure_asked_already")
    assert office.get(at).json()["items"][0]["note"] == "We stop milking."
    back = client_of_farm.post(f"/erasures/{asked.json()['id']}/withdraw/")
    assert back.json()["withdrawn_at"] is not None
    assert not Erasure.objects.within(house.scope).filter(withdrawn_at=None).exists()


def test_data_are_taken_out_by_who_may(client_of_farm, office, at_farm, house):
    give(house)
    assert client_of_farm.get(f"{at_farm}/data/csv/").status_code == 403
    give(house, FarmRight.HANDS_OVER)
    for what, part in (("csv", "cows.csv"), ("ade", ".json"), ("xlsx", "xl/workbook.xml")):
        for caller in (client_of_farm, office):
            answer = caller.get(f"{at_farm}/data/{what}/")
            assert answer.status_code == 200
            names = zipfile.ZipFile(io.BytesIO(answer.content)).namelist()
            assert any(name.endswith(part) for name in names), (what, names)
    other = make_farm(house.business, "High", by=house.owner)
    assert client_of_farm.get(f"/farms/{other.pk}/data/ade/").status_code == 404
