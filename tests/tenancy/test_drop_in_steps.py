import pytest

from farms.models import Payer
from tests.factories import make_business
from trimops.kernel.scope import Scope
from trimops.tenancy.drop_in_steps import drop_in_steps
from trimops.tenancy.errors import ScopeRequired


@pytest.mark.django_db
@pytest.mark.parametrize("at_once", [1, 2, 5, 6, 100])
def test_all_go_however_few_at_a_time_and_others_keep_theirs(at_once):
    business, other = make_business(), make_business("Elm & Oak")
    for number in range(5):
        Payer.objects.create(business=business, name=f"Payer {number}")
    kept = Payer.objects.create(business=other, name="Another")
    rows = Payer.objects.within(Scope(business.pk))
    assert drop_in_steps(rows, at_once) == 5
    assert Payer.objects.within(Scope(other.pk)).get() == kept


@pytest.mark.django_db
def test_rows_of_nobody_in_particular_are_not_dropped():
    with pytest.raises(ScopeRequired):
        drop_in_steps(Payer.objects.all())
