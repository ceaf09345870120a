import pytest
from django.core.exceptions import ValidationError

from farms.models import Contact
from farms.services.save_contact import remove_contact, save_contact
from tests.factories import make_house

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


def person(house, **words):
    usual = {"farm": house.farm, "name": "Ada", "part": "herd manager"}
    return Contact(business=house.business, **{**usual, **words})


def test_a_person_is_kept_and_taken_off(house):
    contact = save_contact(contact=person(house))
    assert [row.name for row in Contact.objects.within(house.scope)] == ["Ada"]
    remove_contact(contact=contact)
    assert not Contact.objects.within(house.scope).exists()


def test_a_person_needs_a_name_and_a_farm_of_the_same_business(house):
    with pytest.raises(ValidationError):
        save_contact(contact=person(house, name=""))
    with pytest.raises(ValidationError):
        save_contact(contact=person(house, farm=make_house("Other Trimming").farm))
