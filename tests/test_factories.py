"""What the factories write as rows at once is what the services would have written."""

from datetime import time

import pytest
from django.forms import model_to_dict

from farms.models import Cow, Farm, HygieneChange, Milking
from farms.services.save_cow import save_cow
from farms.services.save_farm import save_farm
from farms.services.set_milkings import DailyMilking, set_milkings
from invoicing.models import Price
from tests.factories import NOON, PASSWORD, make_house, make_prices, make_user
from trimops.accounts.models import User
from visits.models import ShiftPattern

pytestmark = pytest.mark.django_db
NOT_TOLD = {"id", "uid", "name", "farm_id"}


def rows_of(model, house):
    return list(model.objects.within(house.scope).order_by("pk"))


def without_key(row):
    return {name: value for name, value in model_to_dict(row).items() if name != "id"}


def test_the_milkings_of_a_farm_are_those_that_the_service_writes():
    house = make_house()
    quick = [without_key(row) for row in rows_of(Milking, house)]
    set_milkings(farm=house.farm, milkings=[DailyMilking(time(6), 120), DailyMilking(time(16), 120)])
    assert quick == [without_key(row) for row in rows_of(Milking, house)]


def test_a_farm_and_a_cow_of_which_nothing_special_is_told_are_those_that_the_services_write():
    house = make_house()
    farm = Farm(business=house.business, name="Low Croft again")
    for name in ("address", "latitude", "longitude", "herd_size"):
        setattr(farm, name, getattr(house.farm, name))
    save_farm(farm=farm, at=NOON, by=house.owner)
    cow = save_cow(cow=Cow(business=house.business, farm=farm, number=house.cow.number))
    for model, quick, slow in ((Farm, house.farm, farm), (Cow, house.cow, cow)):
        rows = [model.objects.within(house.scope).values().get(pk=row.pk) for row in (quick, slow)]
        told = [{name: value for name, value in row.items() if name not in NOT_TOLD} for row in rows]
        assert told[0] == told[1]
    (first, second) = HygieneChange.objects.within(house.scope).order_by("pk")
    assert {**without_key(first), "farm": second.farm_id} == without_key(second)


def test_a_person_is_one_that_the_manager_makes():
    quick, slow = make_user("Ann"), User.objects.create_user("Ann@example.invalid", "Ann", PASSWORD)
    assert quick.check_password(PASSWORD)
    own = {"id", "email", "password", "date_joined"}
    assert {name for name, value in model_to_dict(slow).items() if model_to_dict(quick)[name] != value} <= own
    assert not make_user(password=None).has_usable_password()


def test_no_row_of_a_house_would_be_refused():
    house = make_house()
    make_prices(house.business)
    known = {
        "people": [row.user for row in house.memberships.values()],
        "memberships": house.memberships.values(),
        "shifts": rows_of(ShiftPattern, house),
        "milkings": rows_of(Milking, house),
        "prices": rows_of(Price, house),
        "one of each": [house.business, house.farm, house.cow, house.van],
    }
    for what, rows in known.items():
        assert rows, what
        for row in rows:
            row.full_clean()
