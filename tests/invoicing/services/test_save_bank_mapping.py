from dataclasses import replace

import pytest

from invoicing.models import BankMapping
from invoicing.services.save_bank_mapping import MappingUnclear, mapping_of, save_bank_mapping
from tests.invoicing.domain.test_bank_csv import FOR_COMMA, FOR_POINT


def save(house, mapping, name="Our bank"):
    return save_bank_mapping(business=house.business, name=name, mapping=mapping)


def test_it_comes_back_as_it_was_and_the_same_name_is_replaced(house):
    row = save(house, FOR_COMMA)
    row.refresh_from_db()
    assert mapping_of(row) == FOR_COMMA
    assert save(house, FOR_POINT).pk == row.pk
    assert mapping_of(BankMapping.objects.within(house.scope).get()) == FOR_POINT


@pytest.mark.parametrize(
    "mapping",
    [
        replace(FOR_COMMA, amount=None),
        replace(FOR_POINT, debit=None),
        replace(FOR_POINT, amount=1),
    ],
)
def test_it_must_be_clear_where_the_amount_is(house, mapping):
    with pytest.raises(MappingUnclear):
        save(house, mapping)
