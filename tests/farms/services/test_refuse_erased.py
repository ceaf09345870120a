"""Nothing is put down for a farm whose data were erased."""

from datetime import time

import pytest

from farms.models import Contact, Cow, Farm, FarmAccess, Milking
from farms.services.forget_farm import forget_farm
from farms.services.invite_farm_client import FarmGuest, invite_farm_client
from farms.services.keep_herd_list import keep_herd_list
from farms.services.refuse_erased import FarmIsErased, refuse_erased
from farms.services.save_contact import save_contact
from farms.services.save_farm import save_farm
from farms.services.set_milkings import DailyMilking, set_milkings
from tests.factories import NOON, make_cow, wanted
from trimops.kernel.scope import Scope
from visits.models import Visit
from visits.services.note_scores import ScoringWord, note_scores

WRITES = {
    "a cow": lambda farm, by: make_cow(farm, "101"),
    "its name": lambda farm, by: save_farm(farm=farm, at=NOON, by=by),
    "a person": lambda farm, by: save_contact(
        contact=Contact(business=farm.business, farm=farm, name="H. Manager", part="Owner")
    ),
    "somebody let in": lambda farm, by: invite_farm_client(
        farm=farm, guest=FarmGuest("new@farm.example", "New Hand"), at=NOON, by=by
    ),
    "a herd list": lambda farm, by: keep_herd_list(
        farm=farm, file_name="herd.csv", content=b"number\n101\n", at=NOON, by=by
    ),
    "a visit": lambda farm, by: wanted(farm),
    "milkings": lambda farm, by: set_milkings(farm=farm, milkings=[DailyMilking(time(6), 120)]),
    "scores": lambda farm, by: note_scores(farm=farm, word=ScoringWord(NOON.date(), "UK0-3"), at=NOON, by=by),
}


def test_nothing_is_put_down_for_it_any_more(house):
    farm = house.farm
    forget_farm(farm=farm, at=NOON)
    for what, write in WRITES.items():
        with pytest.raises(FarmIsErased):
            write(farm, house.owner)
            pytest.fail(what)
    of_farm = Scope(house.business.pk, farm.pk)
    assert not any(m.objects.within(of_farm).exists() for m in (Contact, Cow, FarmAccess, Milking, Visit))
    assert Farm.objects.within(house.scope).get(pk=farm.pk).erased_at == NOON


def test_any_other_farm_is_written_to(house):
    refuse_erased(farm=house.farm)
