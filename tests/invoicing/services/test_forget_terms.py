from invoicing.models import Agreement, FarmTerms
from invoicing.services.forget_terms import forget_terms
from tests.factories import make_farm
from tests.invoicing.services.test_save_agreement import agree


def test_what_hangs_on_the_farm_goes_and_the_next_farm_keeps_its_own(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    agree(house)
    for farm in (house.farm, other):
        FarmTerms.objects.create(business=house.business, farm=farm, send_to=["a@example.invalid"])
    assert forget_terms(farm=house.farm) == {"agreements on prices": 1, "terms of payment": 1}
    assert not Agreement.objects.within(house.scope).exists()
    assert FarmTerms.objects.within(house.scope).get().farm == other
    assert forget_terms(farm=house.farm) == {}
