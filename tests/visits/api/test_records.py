"""What was seen and done, photos and papers over the API: read by the business and by the farm."""

import pytest

from farms.models import FarmAccess
from tests.factories import JPEG, blocked_foot, finish, make_farm, photo_of, put_down, under_way
from tests.visits.api.caller import code_of


@pytest.fixture
def visit(house):
    return under_way(house.farm, house.van)


@pytest.fixture
def trim(house, visit):
    return put_down(visit, house.cow, blocked_foot(has_pain=True), note="Calm", for_vet="Very lame behind")


@pytest.fixture
def done(house, visit, trim):
    return finish(visit, house.trimmer)


def test_a_trim_is_told_with_feet_findings_and_actions(owner, client_of_farm, house, visit, trim):
    for caller in (owner, client_of_farm):
        (told,) = caller.get(f"/visits/{visit.pk}/trims/").json()["items"]
        assert told == caller.get(f"/trims/{trim.pk}/").json()
        assert told == caller.get(f"/cows/{house.cow.pk}/trims/").json()["items"][0]
        (foot,) = told["feet"]
        assert foot["has_pain"] is True
        assert {action["kind"] for action in foot["actions"]} >= {"block"}
        assert told["note"] == "Calm"


def test_blocks_and_rechecks_are_found_by_what_is_due(owner, client_of_farm, house, trim):
    (block,) = client_of_farm.get(f"/blocks/?is_on=true&farm={house.farm.pk}").json()["items"]
    assert (block["cow"], block["off_on"], block["put_on_by"]) == (house.cow.pk, None, trim.pk)
    assert owner.get(f"/blocks/?off_by_day={block['put_on']}").json()["items"] == []
    (recheck,) = owner.get(f"/rechecks/?is_open=true&cow={house.cow.pk}").json()["items"]
    assert owner.get(f"/rechecks/{recheck['id']}/").json() == recheck
    assert owner.get("/rechecks/?is_open=false").json()["items"] == []
    assert owner.get(f"/rechecks/?late_on={recheck['due_until']}").json()["items"] == []


def test_a_photo_is_listed_and_fetched(client_of_farm, visit, trim):
    photo = photo_of(trim)
    (told,) = client_of_farm.get(f"/visits/{visit.pk}/photos/").json()["items"]
    assert (told["uid"], told["trim"]) == (str(photo.uid), trim.pk)
    fetched = client_of_farm.get(f"/visits/{visit.pk}/photos/{photo.uid}/file/")
    assert (fetched["Content-Type"], fetched.content) == ("image/jpeg", JPEG)
    trim.taken_back_at = trim.recorded_at
    trim.save()
    assert client_of_farm.get(f"/visits/{visit.pk}/photos/").json()["items"] == []
    assert client_of_farm.get(f"/visits/{visit.pk}/photos/{photo.uid}/file/").status_code == 404


def test_a_report_is_issued_once_and_read_as_it_left(owner, client_of_farm, visit, trim, house):
    assert code_of(owner.post(f"/visits/{visit.pk}/reports/issue/")) == (409, "visit_not_finished")
    finish(visit, house.trimmer)
    issued = owner.post(f"/visits/{visit.pk}/reports/issue/")
    assert (issued.status_code, issued.json()["version"]) == (201, 1)
    assert code_of(owner.post(f"/visits/{visit.pk}/reports/issue/")) == (409, "nothing_new")
    (told,) = client_of_farm.get(f"/visits/{visit.pk}/reports/").json()["items"]
    assert told["mailed_to"] is None
    whole = client_of_farm.get(f"/reports/{told['id']}/").json()
    assert whole["content"]["farm_name"] == house.farm.name
    paper = client_of_farm.get(f"/reports/{told['id']}/pdf/")
    assert (paper["Content-Type"], paper.content[:4]) == ("application/pdf", b"%PDF")


def test_a_letter_to_the_vet_is_issued_and_read(owner, client_of_farm, done, trim):
    issued = owner.post(f"/trims/{trim.pk}/letters/issue/")
    assert issued.status_code == 201, issued.content
    assert code_of(owner.post(f"/trims/{trim.pk}/letters/issue/")) == (409, "nothing_new")
    (told,) = client_of_farm.get(f"/visits/{done.pk}/letters/").json()["items"]
    assert client_of_farm.get(f"/letters/{told['id']}/").json()["content"]
    assert client_of_farm.get(f"/letters/{told['id']}/pdf/").content[:4] == b"%PDF"
    assert code_of(client_of_farm.post(f"/trims/{trim.pk}/letters/issue/")) == (403, "not_allowed")


def test_reports_are_closed_without_the_right_to_read_them(client_of_farm, house, done, trim):
    access = FarmAccess.objects.within(house.scope).get()
    access.reads_reports = False
    access.save()
    for address in (f"/visits/{done.pk}/reports/", f"/farms/{house.farm.pk}/herd-figures/"):
        assert code_of(client_of_farm.get(address)) == (403, "not_allowed")
    assert client_of_farm.get(f"/visits/{done.pk}/trims/").status_code == 200


def test_a_herds_feet_are_told_with_their_cautions(client_of_farm, house, done):
    told = client_of_farm.get(f"/farms/{house.farm.pk}/herd-figures/").json()
    assert told["findings"]
    assert "no diagnosis" in told["cautions"][0]
    year = client_of_farm.get(f"/farms/{house.farm.pk}/herd-years/2026/pdf/")
    assert (year.status_code, year.content[:4]) == (200, b"%PDF")
    assert client_of_farm.get(f"/farms/{house.farm.pk}/herd-years/1999/pdf/").status_code == 404


def test_another_farms_cow_is_not_there_for_a_farm(client_of_farm, owner, house):
    other = make_farm(house.business, "Elsewhere", by=house.owner)
    assert client_of_farm.get(f"/farms/{other.pk}/herd-figures/").status_code == 404
    assert code_of(client_of_farm.get(f"/cows/{house.cow.pk}/versions/")) == (403, "not_allowed")
    assert owner.get(f"/cows/{house.cow.pk}/versions/").json() == {"items": []}
