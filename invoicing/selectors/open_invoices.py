"""What one farm, and the others of its payer, still have to pay."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db.models import Q

from farms.models import Farm
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import OpenItem
from invoicing.models import Invoice
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class OpenRow:
    """One open invoice; `farm_name` says whose it is, since one payer may stand for several farms."""

    key: int
    number: str
    farm_name: str
    issued_on: date
    due_on: date | None
    payable: Decimal
    open_amount: Decimal

    @property
    def item(self) -> OpenItem:
        return OpenItem(self.key, self.open_amount, self.due_on, self.issued_on)


def open_invoices(scope: Scope, farm: Farm, currency: str) -> list[OpenRow]:
    """Issued invoices of the farm, and of its payer's other farms, that are not settled; that due first first."""
    whose = Q(farm=farm) | Q(payer_id=farm.payer_id) if farm.payer_id else Q(farm=farm)
    rows = Invoice.objects.within(scope).issued().bills().filter(whose, is_open=True, currency=currency)
    rows = rows.select_related("farm").order_by("due_on", "issued_on", "pk")
    columns = ("number", "issued_on", "due_on", "payable", "settled", "farm__name", "farm__business")
    digits = minor_digits(currency)
    return [
        OpenRow(
            row.pk,
            row.number,
            row.farm.name,
            row.issued_on or row.tax_point,
            row.due_on,
            round_money(row.payable, digits),
            round_money(row.open_amount, digits),
        )
        for row in rows.only(*columns)
    ]
