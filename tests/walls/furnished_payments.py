"""A payment, what it was set against, a booking at the bank and a file of it."""

from decimal import Decimal

from invoicing.domain.settling import PaymentMethod
from invoicing.models import BankEntry, Invoice
from invoicing.services.keep_bank_file import keep_bank_file
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.read_bank_file import read_bank_file
from tests.factories import MONDAY, NOON, House

CSV = "Day,Amount,Who\n2026-03-02,{amount},A. Farmer\n"
XML = """<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.08"><BkToCstmrStmt><Stmt><Id>{name}</Id>
<Acct><Id><Othr><Id>1</Id></Othr></Id></Acct><Ntry><Amt Ccy="GBP">10.00</Amt><CdtDbtInd>CRDT</CdtDbtInd>
<Sts><Cd>BOOK</Cd></Sts><BookgDt><Dt>2026-03-02</Dt></BookgDt><AcctSvcrRef>{name}</AcctSvcrRef></Ntry>
</Stmt></BkToCstmrStmt></Document>"""


def payments_of(house: House, invoice: Invoice) -> dict[str, object]:
    """Keys of the rows; half of a payment is set against the invoice."""
    shares = {invoice.pk: Decimal(5)}
    money = MoneyReceived(invoice.farm, MONDAY, Decimal(10), "GBP", PaymentMethod.CASH, shares)
    payment = note_payment(money=money, at=NOON, by=house.office)
    told = {"business": house.business, "at": NOON, "by": house.office}
    csv = keep_bank_file(file_name="a.csv", content=CSV.format(amount=invoice.pk).encode(), **told)
    xml = keep_bank_file(file_name="a.xml", content=XML.format(name=f"S{invoice.pk}").encode(), **told)
    read_bank_file(file=xml, at=NOON, by=house.office)
    return {
        "payment": payment.pk,
        "allocation": payment.allocations.within(house.scope).get().pk,
        "bank_file": csv.pk,
        "bank_entry": BankEntry.objects.within(house.scope).get(statement__file=xml).pk,
    }
