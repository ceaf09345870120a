"""Drafts to issue: of a visit's work, or of one line that bills nothing in particular (quick)."""

from datetime import timedelta
from decimal import Decimal

from invoicing.domain.pricing import PriceItem
from invoicing.models import Invoice, InvoiceLine
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from tests.factories import NOON, TUESDAY_TEN, blocked_foot, finish, put_down, under_way
from trimops.kernel.money import round_money


def visit(house, number=0):
    """A finished visit with one cow that got a block; `number` keeps their days apart."""
    begun = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=number))
    put_down(begun, house.cow, blocked_foot())
    return finish(begun, house.trimmer)


def draft(house, number=0):
    return draft_invoice(visit=visit(house, number), at=NOON)


def plain_draft(house, net="10.00", **fields):
    """One line at 20 %. A credit note with `corrects` and `reason`."""
    net = Decimal(net)
    kind = "credit_note" if "corrects" in fields else "invoice"
    row = Invoice(
        business=house.business, farm=house.farm, kind=kind, currency=house.business.currency, **fields
    )
    row.tax_point, row.drafted_at = NOON.date(), NOON
    row.line_sum = row.net = net
    row.tax = round_money(net / 5)
    row.gross = row.payable = row.net + row.tax
    row.full_clean()
    row.save()
    line = InvoiceLine(
        business=house.business, invoice=row, position=1, item=PriceItem.CALL_OUT.value, net=net
    )
    line.description, line.quantity, line.unit, line.unit_price = "Call-out", Decimal(1), "C62", net
    line.tax_category, line.tax_percent = "S", Decimal(20)
    line.full_clean()
    line.save()
    return row


def issue(invoice, house, at=NOON):
    return issue_invoice(invoice=invoice, at=at, by=house.office)
