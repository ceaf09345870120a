from datetime import timedelta

import pytest

from tests.factories import NOON, blocked_foot, make_house, photo_of, put_down, under_way
from visits.models import Trim, TrimPhoto
from visits.services.drop_old_photos import drop_old_photos


@pytest.mark.django_db
def test_photos_older_than_that_go_and_their_cows_stay():
    house, other = make_house(), make_house("Elm & Oak")
    photos = [photo_of(put_down(under_way(h.farm, h.van), h.cow, blocked_foot())) for h in (house, other)]
    taken = photos[0].taken_at
    assert drop_old_photos(scope=house.scope, before=taken) == 0
    assert drop_old_photos(scope=house.scope, before=taken + timedelta(seconds=1)) == 1
    assert not TrimPhoto.objects.within(house.scope).exists()
    assert Trim.objects.within(house.scope).count() == 1
    assert TrimPhoto.objects.within(other.scope).count() == 1
    assert taken > NOON
