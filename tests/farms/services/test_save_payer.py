import pytest
from django.core.exceptions import ValidationError

from farms.models import Payer
from farms.services.save_payer import save_payer
from tests.factories import make_house

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


def test_a_payer_is_kept_and_mended(house):
    payer = save_payer(payer=Payer(business=house.business, name="Moor Estate"))
    payer.payment_days = 14
    save_payer(payer=payer)
    assert Payer.objects.within(house.scope).get().payment_days == 14


def test_one_name_stands_once_in_a_business_but_may_in_another(house):
    save_payer(payer=Payer(business=house.business, name="Moor Estate"))
    with pytest.raises(ValidationError):
        save_payer(payer=Payer(business=house.business, name="Moor Estate"))
    save_payer(payer=Payer(business=make_house("Other Trimming").business, name="Moor Estate"))
