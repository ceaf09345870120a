"""The papers of a visit: the agreed shape, for this business alone, in as few questions for many cows as for few."""

import gzip
import json
import uuid
from datetime import timedelta

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from farms.domain.identity_kind import IdentityKind
from farms.models import Contact
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_blade,
    make_cow,
    make_house,
    make_kit,
    named,
    put_down,
    stock_up,
    under_way,
)
from tests.visits.web.papers_shape import SHAPE, same_shape
from visits.models import CrushWriting
from visits.services.set_figures import OwnFigures, set_figures

LATER = TUESDAY_TEN + timedelta(days=28)
FEW, MANY = 3, 30


@pytest.fixture
def house(db):
    return make_house()


def papers(house, visit, by=None):
    client = Client()
    client.force_login(by or house.trimmer)
    answer = client.get(reverse("crush_papers", args=[visit.pk]))
    assert answer.status_code == 200
    return answer.json()


def written_by(house, visit, **fields):
    keys = {
        "cow": house.cow,
        "uid": uuid.uuid4(),
        "record": uuid.uuid4(),
        "phone": uuid.uuid4(),
        "kind": "cow",
    }
    times = dict.fromkeys(("made_at", "placed_at", "received_at"), TUESDAY_TEN)
    return CrushWriting.objects.create(
        business=house.business, visit=visit, by=house.trimmer, **{**keys, **times, **fields}
    )


def furnished(house):
    """A visit with one of everything that the papers can tell, on the house's cow alone."""
    before = under_way(house.farm, house.van)
    put_down(before, house.cow, blocked_foot())
    finish(before, house.trimmer)
    house.cow.identities.create(business=house.business, kind=IdentityKind.COLLAR.value, value="77")
    Contact.objects.create(business=house.business, farm=house.farm, name="H. Manager", part="Herd manager")
    kit = make_kit(house.business)
    stock_up(kit["wood"], 40, at=NOON, van=house.van)
    make_blade(house.van, "Red handle")
    visit = under_way(house.farm, house.van, LATER)
    written_by(house, visit, content={"told_vet": ""})
    return visit


def test_the_papers_have_the_agreed_shape(house):
    same_shape(papers(house, furnished(house)), SHAPE)


def test_they_tell_the_cow_the_farm_and_the_kit(house):
    visit = furnished(house)
    told = papers(house, visit)
    (cow,) = told["cows"]
    assert (cow["number"], cow["ids"]) == ("101", [{"kind": "collar", "label": "Collar", "value": "77"}])
    assert cow["blocks"] == [
        {"foot": "LH", "claw": "medial", "kind": "wood", "put_on": "2026-03-03", "off_due": "2026-03-31"}
    ]
    assert cow["why"]
    assert cow["last"][0]["done"] == ["left hind inner: wooden block"]
    assert told["queue"] == [house.cow.pk]
    assert told["visit"]["done_by"] == "2026-03-31T15:00:00+00:00"
    assert told["farm"]["set_up"][:3] == ["Crush brought", "Hard standing", "Water and hose"]
    (wood,) = [item for item in told["consumables"] if item["name"] == "Wooden block"]
    assert (wood["in_van"], wood["uses"]) == (40, [{"per": "block", "block_kind": "wood", "quantity": 1}])
    assert told["cursor"] == CrushWriting.objects.within(house.scope).get(visit=visit).pk
    assert told["written"][0]["shows"] is True


def test_a_cow_who_was_put_down_today_stays_in_them_when_the_desk_has_sold_her(house):
    visit = furnished(house)
    sold, other = make_cow(house.farm, "102"), house.cow
    for cow in (sold, other):
        cow.status = "sold"
        cow.save()
    told = papers(house, visit)
    assert [cow["id"] for cow in told["cows"]] == [other.pk]
    assert told["written"][0]["cow_id"] == other.pk


def test_the_business_s_own_figures_are_in_them(house):
    own = OwnFigures({}, {"block.wood": [20, 25]}, {}, {"feet_lifted": 2})
    set_figures(business=house.business, figures=own)
    figures = papers(house, under_way(house.farm, house.van))["figures"]
    assert figures["trim"]["feet_lifted"] == 2
    assert figures["rechecks"]["block"]["wood"] == [20, 25]


def test_of_two_phones_writings_the_later_shows_and_each_names_the_other(house):
    visit = under_way(house.farm, house.van)
    early = written_by(house, visit)
    late = written_by(house, visit, placed_at=TUESDAY_TEN + timedelta(minutes=1))
    told = {writing["uid"]: writing for writing in papers(house, visit)["written"]}
    assert [told[str(row.uid)]["shows"] for row in (early, late)] == [False, True]
    assert told[str(late.uid)]["beside"] == [str(early.uid)]


def test_cows_that_left_and_cows_of_other_farms_are_not_in_them(house):
    make_cow(house.farm, "900", status="sold")
    make_cow(make_house("Other").farm, "901")
    assert [cow["number"] for cow in papers(house, under_way(house.farm, house.van))["cows"]] == ["101"]


def test_they_are_never_kept_by_the_browser_and_bring_the_cookie_for_sending(house):
    client = Client(headers={"accept-encoding": "gzip"})
    client.force_login(house.trimmer)
    answer = client.get(reverse("crush_papers", args=[under_way(house.farm, house.van).pk]))
    assert answer["Cache-Control"] == "no-store"
    assert "csrftoken" in answer.cookies
    assert json.loads(gzip.decompress(answer.content))["format"] == "trimops-crush-papers/1"


def test_another_business_s_visit_is_not_there(house):
    client = Client()
    client.force_login(house.trimmer)
    foreign = make_house("Other")
    visit = under_way(foreign.farm, foreign.van)
    assert client.get(reverse("crush_papers", args=[visit.pk])).status_code == 404


def test_thirty_cows_take_as_many_questions_as_three(house):
    def questions(count):
        before = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=count))
        cows = [
            make_cow(house.farm, f"{count}0{n}", {IdentityKind.COLLAR: f"{count}{n}"}) for n in range(count)
        ]
        for cow in cows:
            put_down(before, cow, blocked_foot())
        finish(before, house.trimmer)
        later = LATER + timedelta(days=count)
        visit = under_way(house.farm, house.van, later, cows=[named(cow) for cow in cows])
        for cow in cows:
            written_by(house, visit, cow=cow)
        client = Client()
        client.force_login(house.trimmer)
        with CaptureQueriesContext(
            connection,
        ) as asked:
            assert len(client.get(reverse("crush_papers", args=[visit.pk])).json()["cows"]) > count
        return len(asked)

    assert questions(FEW) == questions(MANY)
