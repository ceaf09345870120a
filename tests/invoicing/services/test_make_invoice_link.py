from datetime import timedelta

import pytest

from farms.services.refuse_erased import FarmIsErased
from invoicing.models import Invoice, InvoiceLink
from invoicing.services.make_invoice_link import NotIssuedYet, make_invoice_link
from tests.factories import MONDAY, NOON
from tests.invoicing.issued_row import issued_row
from trimops.kernel.secret_link import hash_of


def test_only_the_hash_of_the_secret_is_kept_and_it_ends_after_ninety_days(house):
    made = make_invoice_link(invoice=issued_row(house), at=NOON)
    secret = made.address.rstrip("/").rpartition("/")[2]
    row = InvoiceLink.objects.within(house.scope).get()
    assert row.secret_hash == hash_of(secret)
    assert row.expires_at - NOON == timedelta(days=90)
    assert secret not in str(row.__dict__)


def test_each_link_is_another(house):
    invoice = issued_row(house)
    assert len({make_invoice_link(invoice=invoice, at=NOON).address for _ in range(3)}) == 3


def test_a_draft_has_none(house):
    draft = Invoice(business=house.business, farm=house.farm, currency="GBP", drafted_at=NOON)
    draft.tax_point = MONDAY
    draft.save()
    with pytest.raises(NotIssuedYet):
        make_invoice_link(invoice=draft, at=NOON)


def test_a_farm_that_was_erased_has_none(house):
    invoice = issued_row(house)
    invoice.farm.erased_at = NOON
    with pytest.raises(FarmIsErased):
        make_invoice_link(invoice=invoice, at=NOON)
