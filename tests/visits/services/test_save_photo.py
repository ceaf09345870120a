"""A photo comes in."""

import hashlib
from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest

from tests.factories import JPEG, NOON, blocked_foot, put_down, under_way
from visits.domain.feet import Foot
from visits.models import TrimPhoto
from visits.services.save_photo import PhotoOfAnotherVisit, SentPhoto, save_photo


@pytest.fixture
def sent():
    return SentPhoto(uuid4(), uuid4(), Foot.LEFT_HIND, NOON, JPEG)


def save(house, visit, photo):
    return save_photo(visit=visit, photo=photo, at=NOON, by=house.trimmer)


def test_it_is_kept_as_it_came_with_its_fingerprint(house, visit, sent):
    photo, is_new = save(house, visit, sent)
    photo.refresh_from_db()
    assert (is_new, bytes(photo.picture), photo.size) == (True, JPEG, len(JPEG))
    assert (photo.sha256, photo.foot, photo.trim) == (hashlib.sha256(JPEG).hexdigest(), "LH", None)


def test_it_hangs_on_the_cow_of_its_record(house, visit, sent):
    trim = put_down(visit, house.cow, blocked_foot())
    photo, _ = save(house, visit, replace(sent, record=trim.client_id))
    photo.refresh_from_db()
    assert photo.trim == trim


def test_sent_again_the_first_stays(house, visit, sent):
    first, _ = save(house, visit, sent)
    again, is_new = save(house, visit, replace(sent, picture=JPEG + b"\xff\xd9"))
    assert (again.pk, is_new) == (first.pk, False)
    assert bytes(TrimPhoto.objects.within(house.scope).get().picture) == JPEG


def test_one_of_another_visit_is_refused(house, visit, sent):
    save(house, visit, sent)
    other = under_way(house.farm, house.van, visit.started_at + timedelta(days=1))
    with pytest.raises(PhotoOfAnotherVisit):
        save(house, other, sent)


def test_a_photo_of_the_whole_cow_names_no_foot(house, visit, sent):
    assert save(house, visit, replace(sent, foot=None))[0].foot == ""
