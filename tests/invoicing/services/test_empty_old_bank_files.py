from datetime import timedelta

import pytest

from invoicing.models import BankEntry, BankFile
from invoicing.services.empty_old_bank_files import empty_old_bank_files
from invoicing.services.keep_bank_file import BankFileRefused, keep_bank_file
from invoicing.services.read_bank_file import read_bank_file
from tests.factories import NOON, make_house
from tests.invoicing.domain.test_camt053 import NEW, OLD


def keep(house, content, at=NOON):
    return keep_bank_file(business=house.business, file_name="bank", content=content, at=at, by=house.office)


@pytest.mark.django_db
def test_a_file_that_was_read_is_emptied_and_known_again_and_one_never_read_goes():
    house = make_house()
    read_bank_file(file=keep(house, OLD), at=NOON, by=house.office)
    keep(house, b"day;amount\n01.01.2026;1,00\n")
    newer = keep(house, NEW, NOON + timedelta(days=1))
    bookings = BankEntry.objects.within(house.scope).count()
    assert empty_old_bank_files(scope=house.scope, before=NOON + timedelta(hours=1)) == 2
    assert empty_old_bank_files(scope=house.scope, before=NOON + timedelta(hours=1)) == 0
    kept = BankFile.objects.within(house.scope).exclude(pk=newer.pk).get()
    assert bytes(kept.content) == b""
    assert BankEntry.objects.within(house.scope).count() == bookings > 0
    with pytest.raises(BankFileRefused, match="read before"):
        keep(house, OLD)
