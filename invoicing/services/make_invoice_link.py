"""A secret address that shows one issued invoice to whoever holds it."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from django.conf import settings
from django.db import transaction
from django.urls import reverse

from farms.services.refuse_erased import refuse_erased
from invoicing.models import Invoice, InvoiceLink
from trimops.kernel.errors import RuleBroken
from trimops.kernel.secret_link import hash_of, new_secret

LIFE = timedelta(days=90)


class NotIssuedYet(RuleBroken):
    """A draft is nobody's but the office's."""

    code = "not_issued_yet"


@dataclass(frozen=True)
class NewInvoiceLink:
    """The stored row, and the whole address, which is told once and never stored."""

    row: InvoiceLink
    address: str


@transaction.atomic
def make_invoice_link(*, invoice: Invoice, at: datetime) -> NewInvoiceLink:
    """An address that opens the invoice for 90 days. NotIssuedYet for a draft, FarmIsErased."""
    if not invoice.is_issued:
        raise NotIssuedYet("This is a draft still: issue it first.")
    refuse_erased(farm=invoice.farm)
    secret = new_secret()
    row = InvoiceLink(business_id=invoice.business_id, invoice=invoice, secret_hash=hash_of(secret))
    row.made_at, row.expires_at = at, at + LIFE
    row.full_clean()
    row.save()
    return NewInvoiceLink(row, f"{settings.SITE_ADDRESS}{reverse('invoice_by_link', args=[secret])}")
