import pytest

from invoicing.domain.bank_file import MOST_BYTES
from invoicing.models import BankFile
from invoicing.services.keep_bank_file import BankFileRefused, keep_bank_file
from invoicing.services.read_bank_file import read_bank_file
from tests.factories import JPEG, NOON, make_house
from tests.invoicing.domain.test_camt053 import OLD


def keep(house, content=OLD, name="statement.xml"):
    return keep_bank_file(business=house.business, file_name=name, content=content, at=NOON, by=house.office)


def test_it_is_kept_as_it_came_once_for_each_business(house):
    row = keep(house)
    assert (bytes(row.content), row.read_at, keep(house)) == (OLD, None, row)
    assert keep(make_house("Fell & Beck")) != row


def test_what_was_read_is_not_kept_again(house):
    read_bank_file(file=keep(house), at=NOON, by=house.office)
    with pytest.raises(BankFileRefused, match=r"read before, as “statement\.xml”"):
        keep(house)


REFUSED = {
    "empty": b"",
    "too large": b"x" * (MOST_BYTES + 1),
    "another XML": b"<invoice/>",
    "a broken one": OLD[:-40],
    "one with words that multiply": OLD.replace(b"?>", b'?><!DOCTYPE a [<!ENTITY a "b">]>', 1),
    "a picture": JPEG,
    "a PDF": b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n" + bytes(64) + b"\x81\x8d\xd8\xd8\xd8",
    "a spreadsheet": b"PK\x03\x04" + bytes(26) + b"\x8d\xdc",
}


@pytest.mark.parametrize("content", REFUSED.values(), ids=REFUSED)
def test_what_can_never_be_read_is_refused_and_not_kept(house, content):
    with pytest.raises(BankFileRefused):
        keep(house, content)
    assert not BankFile.objects.within(house.scope).exists()
