from farms.models import Contact, Payer
from invoicing.models import FarmTerms
from invoicing.selectors.money_addresses import money_addresses, wants_xml
from tests.factories import make_house


def test_the_own_list_goes_before_the_payer_and_the_payer_before_the_farm(db):
    house = make_house()
    farm = house.farm
    Contact.objects.create(
        business=house.business, farm=farm, name="Vet", part="Vet", email="v@x.example", gets_reports=True
    )
    assert money_addresses(farm) == []
    farm.email = "farm@x.example"
    assert money_addresses(farm) == ["farm@x.example"]
    farm.payer = Payer.objects.create(business=house.business, name="Estate", email="")
    assert money_addresses(farm) == ["farm@x.example"]
    farm.payer.email = "estate@x.example"
    assert money_addresses(farm) == ["estate@x.example"]
    to = ["a@x.example", "", "b@x.example", "a@x.example"]
    FarmTerms.objects.create(business=house.business, farm=farm, send_to=to, sends_xml=True)
    assert money_addresses(farm) == ["a@x.example", "b@x.example"]
    assert wants_xml(farm)
    assert not wants_xml(make_house("Far Side").farm)
