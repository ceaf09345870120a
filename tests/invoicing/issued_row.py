"""An issued invoice put down as a row, with papers of a few bytes: quick, for tests of what comes after issuing."""

import hashlib
from datetime import date, timedelta
from decimal import Decimal

from farms.models import Farm
from invoicing.models import Invoice, InvoiceLine, InvoicePapers
from tests.factories import NOON, House
from trimops.kernel.money import round_money

PDF, CII, UBL = b"%PDF-1.7 a made-up paper", b"<cii/>", b"<ubl/>"
TODAY = date(2026, 3, 2)


def issued_row(
    house: House,
    number: str = "INV-2026-0001",
    *,
    gross: str = "120",
    farm: Farm | None = None,
    has_xml: bool = True,
    **fields: object,
) -> Invoice:
    """Due in thirty days, one line at 20 %, nothing paid yet; `fields` change columns."""
    amount = Decimal(gross)
    net = round_money(amount / Decimal("1.2"))
    row = Invoice(business=house.business, farm=farm or house.farm)
    row.currency, row.drafted_at, row.tax_point = "GBP", NOON, TODAY
    row.net = row.line_sum = net
    row.tax, row.gross, row.payable = amount - net, amount, amount
    row.save()
    _line(row, net)
    row.number, row.state, row.papers = number, "issued", _papers(house, has_xml=has_xml)
    row.issued_on, row.issued_at, row.issued_by = TODAY, NOON, house.office
    row.due_on, row.is_open = TODAY + timedelta(days=30), bool(amount)
    row.seller = {"name": house.business.name, "address": "1 Made-up Lane\nNowhere", "phone": "01632 960 001"}
    row.buyer = {"name": "The Estate of Low Croft", "address": "Down the track\nNowhere"}
    row.payment = {"iban": "GB33BUKB20201555555555", "bic": "", "account_name": house.business.name}
    row.creditor_reference = "RF18539007547034"
    for name, value in fields.items():
        setattr(row, name, value)
    row.full_clean()
    row.save()
    return row


def _papers(house: House, *, has_xml: bool) -> InvoicePapers:
    row = InvoicePapers(business=house.business, pdf=PDF, pdf_sha256=hashlib.sha256(PDF).hexdigest())
    if has_xml:
        row.cii, row.cii_sha256 = CII, hashlib.sha256(CII).hexdigest()
        row.ubl, row.ubl_sha256 = UBL, hashlib.sha256(UBL).hexdigest()
    else:
        row.no_xml_because = "The currency has three decimals."
    row.save()
    return row


def _line(row: Invoice, net: Decimal) -> None:
    InvoiceLine.objects.create(
        business=row.business,
        invoice=row,
        position=1,
        item="functional",
        description="Functional trim",
        quantity=Decimal(10),
        unit="C62",
        unit_price=net / 10,
        tax_category="S",
        tax_percent=Decimal(20),
        net=net,
    )
