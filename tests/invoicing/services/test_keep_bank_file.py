import pytest

from invoicing.domain.bank_file import MOST_BYTES
from invoicing.services.keep_bank_file import BankFileRefused, keep_bank_file
from invoicing.services.read_bank_file import read_bank_file
from tests.factories import NOON, make_house
from tests.invoicing.domain.test_camt053 import OLD


def keep(house, content=OLD):
    return keep_bank_file(
        business=house.business, file_name="statement.xml", content=content, at=NOON, by=house.office
    )


def test_it_is_kept_as_it_came_once_for_each_business(house):
    row = keep(house)
    assert (bytes(row.content), row.read_at, keep(house)) == (OLD, None, row)
    assert keep(make_house("Fell & Beck")) != row


def test_what_was_read_is_not_kept_again(house):
    read_bank_file(file=keep(house), at=NOON, by=house.office)
    with pytest.raises(BankFileRefused, match=r"read before, as “statement\.xml”"):
        keep(house)


@pytest.mark.parametrize("content", [b"", b"x" * (MOST_BYTES + 1)])
def test_empty_or_too_large(house, content):
    with pytest.raises(BankFileRefused):
        keep(house, content)
