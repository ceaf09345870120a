"""A photo hangs on its cow, whichever came first."""

from uuid import uuid4

from tests.factories import NOON, blocked_foot, make_cow, photo_of, put_down
from visits.models import TrimPhoto
from visits.services.link_photos import link_photos


def test_loose_photos_are_joined_to_the_cows_that_are_here(house, visit):
    one = photo_of(put_down(visit, house.cow, blocked_foot()))
    two = photo_of(put_down(visit, make_cow(house.farm, "102"), blocked_foot()))
    photos = TrimPhoto.objects.within(house.scope)
    photos.update(trim=None)
    stray = TrimPhoto.objects.create(
        business=house.business,
        uid=uuid4(),
        visit=visit,
        record=uuid4(),
        taken_at=NOON,
        received_at=NOON,
        by=house.trimmer,
        size=1,
        picture=b"x",
    )
    link_photos(visit=visit)
    assert {photo.pk: photo.trim_id for photo in photos} == {
        one.pk: one.trim_id,
        two.pk: two.trim_id,
        stray.pk: None,
    }


def test_without_loose_photos_one_question_is_asked(house, visit, django_assert_num_queries):
    with django_assert_num_queries(1):
        link_photos(visit=visit)
