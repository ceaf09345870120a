from datetime import timedelta

import pytest

from farms.models import VetPass
from farms.services.drop_ended_passes import drop_ended_passes
from tests.factories import NOON, make_house

DAY = timedelta(days=1)


def vet_pass(house, number, expires_at, closed_at=None):
    return VetPass.objects.create(
        business=house.business, farm=house.farm, vet_name="The vet", secret_hash=str(number),
        made_at=NOON - 90 * DAY, made_by=house.owner, expires_at=expires_at, closed_at=closed_at,
    )  # fmt: skip


@pytest.mark.django_db
def test_links_that_ended_or_were_closed_before_go():
    house = make_house()
    vet_pass(house, 1, NOON - DAY)
    vet_pass(house, 2, NOON + DAY, closed_at=NOON - DAY)
    kept = [vet_pass(house, 3, NOON + DAY), vet_pass(house, 4, NOON + DAY, closed_at=NOON)]
    assert drop_ended_passes(scope=house.scope, before=NOON) == 2
    assert set(VetPass.objects.within(house.scope)) == set(kept)
