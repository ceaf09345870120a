"""The farm's own rows go, and only they."""

from farms.models import Contact, Cow, Farm, FarmAccess, Milking, Payer
from farms.services.forget_farm import forget_farm
from tests.factories import NOON, make_cow, make_farm


def test_only_the_number_of_the_farm_is_left(house):
    Contact.objects.create(business=house.business, farm=house.farm, name="H. Manager", part="Owner")
    house.farm.country = "IE"
    gone = forget_farm(farm=house.farm, at=NOON)
    farm = Farm.objects.within(house.scope).get(pk=house.farm.pk)
    assert (farm.name, farm.address, farm.latitude) == (f"Erased farm {farm.pk}", "", 0)
    assert farm.country == ""
    assert (farm.is_active, farm.erased_at) == (False, NOON)
    assert gone["cows"] == gone["contacts"] == gone["people let in"] == 1
    for model in (Cow, Contact, FarmAccess, Milking):
        assert not model.objects.within(house.scope).filter(farm=farm).exists()


def test_the_farm_beside_it_keeps_everything(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    make_cow(second, "505")
    forget_farm(farm=house.farm, at=NOON)
    assert Cow.objects.within(house.scope).get().number == "505"
    assert Milking.objects.within(house.scope).filter(farm=second).exists()


def test_a_payer_goes_with_its_last_farm(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    payer = Payer.objects.create(business=house.business, name="The Estate")
    for farm in (house.farm, second):
        farm.payer = payer
        farm.save()
    forget_farm(farm=house.farm, at=NOON)
    assert Payer.objects.within(house.scope).exists()
    forget_farm(farm=second, at=NOON)
    assert not Payer.objects.within(house.scope).exists()
