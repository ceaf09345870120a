"""Photos come in from the crush, before or after their cow, once each."""

import hashlib
from datetime import timedelta
from uuid import uuid4

import pytest
from django.urls import reverse

from tests.factories import JPEG, let_in, make_farm, make_house, make_member, under_way
from tests.visits.api.phone import blocked, cow_content, put_photo
from trimops.accounts.roles import Role
from visits.domain.jpeg_picture import MOST_PICTURE_BYTES
from visits.models import TrimPhoto


def put(phone, record, uid=None, picture=JPEG, content_type="image/jpeg", **query):
    return put_photo(phone, record, uid or uuid4(), picture, content_type, **query)


def photos(house):
    return TrimPhoto.objects.within(house.scope)


def test_a_photo_that_comes_after_its_cow_hangs_on_her(house, phone):
    cow = phone.write(cow_content(house.cow.pk, blocked()))
    phone.send()
    answer = put(phone, cow["record"])
    assert (answer.status_code, answer.json()["sha256"]) == (201, hashlib.sha256(JPEG).hexdigest())
    photo = photos(house).get()
    assert (photo.trim.cow, photo.foot, photo.size, bytes(photo.picture)) == (
        house.cow,
        "LH",
        len(JPEG),
        JPEG,
    )


def test_a_photo_that_comes_first_waits_for_its_cow(house, phone):
    cow = phone.write(cow_content(house.cow.pk, blocked()))
    put(phone, cow["record"])
    assert photos(house).get().trim is None
    phone.send()
    assert photos(house).get().trim.cow == house.cow


def test_sent_again_the_first_stays(house, phone):
    uid, record = uuid4(), uuid4()
    assert put(phone, record, uid).status_code == 201
    other = JPEG[:-2] + b"!" + JPEG[-2:]
    again = put(phone, record, uid, other)
    assert (again.status_code, again.json()["size"]) == (200, len(JPEG))
    assert photos(house).count() == 1


def test_the_time_is_ours_where_the_phone_says_when_it_sends(house, phone):
    phone.wrong = timedelta(hours=5)
    put(phone, uuid4(), taken_at=phone.clock(timedelta(minutes=10)), sent_at=phone.clock())
    photo = photos(house).get()
    assert timedelta(minutes=9) < photo.received_at - photo.taken_at < timedelta(minutes=11)


@pytest.mark.parametrize(
    ("changes", "status", "field"),
    [
        ({"picture": b"GIF89a" + b"\xff\xd9"}, 400, "body"),
        ({"picture": JPEG[:-2]}, 400, "body"),
        ({"picture": b""}, 400, "body"),
        ({"record": "no-uuid"}, 400, "record"),
        ({"foot": "XX"}, 400, "foot"),
        ({"taken_at": "yesterday"}, 400, "taken_at"),
        ({"made_up": "1"}, 400, "made_up"),
        ({"picture": JPEG + b"\0" * MOST_PICTURE_BYTES}, 413, None),
        ({"content_type": "image/png"}, 415, None),
    ],
)
def test_what_is_no_photo_is_refused_with_the_field(house, phone, changes, status, field):
    answer = put(phone, **{"record": uuid4(), **changes})
    assert (answer.status_code, answer["Content-Type"]) == (status, "application/problem+json")
    if field:
        assert [fault["field"] for fault in answer.json()["faults"]] == [field]
    assert not photos(house).exists()


def test_a_photo_of_another_visit_is_not_taken_over(house, phone):
    uid = uuid4()
    put(phone, uuid4(), uid)
    phone.visit = under_way(house.farm, house.van, phone.visit.started_at + timedelta(days=1))
    answer = put(phone, uuid4(), uid)
    assert (answer.status_code, answer.json()["code"]) == (409, "photo_of_another_visit")


@pytest.fixture
def shown(house, phone):
    """The address of a photo whose cow has arrived, and that cow's writing."""
    cow = phone.write(cow_content(house.cow.pk, blocked()))
    phone.send()
    put(phone, cow["record"], uid := uuid4())
    return reverse("trim_photo", kwargs={"pk": phone.visit.pk, "uid": uid}), cow


def test_the_business_and_the_farm_see_it(house, shown, signed_in):
    for person in (house.owner, house.trimmer, house.office, house.client):
        answer = signed_in(person).get(shown[0])
        assert (answer.status_code, answer.content, answer["Content-Type"]) == (200, JPEG, "image/jpeg")
        assert answer["Cache-Control"] == "private, max-age=31536000, immutable"


def test_another_farm_and_another_business_do_not(house, shown, signed_in):
    stranger = make_member(house.business, Role.FARM)
    let_in(stranger, make_farm(house.business, "High Croft", by=house.owner))
    for person in (stranger.user, make_house("Fell & Beck").owner):
        assert signed_in(person).get(shown[0]).status_code == 404


def test_the_farm_does_not_see_the_photo_of_a_cow_taken_back(house, shown, phone, signed_in):
    phone.undo(shown[1])
    phone.send()
    assert signed_in(house.client).get(shown[0]).status_code == 404
    assert signed_in(house.trimmer).get(shown[0]).status_code == 200
