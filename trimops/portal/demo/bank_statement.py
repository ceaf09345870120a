"""A bank statement for the demo's office to read: what the bank would say of invoices that are still open.

CAMT.053 (ISO 20022, camt.053.001.08) with only what a statement must hold; held against the schema in the tests.
"""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from xml.etree.ElementTree import Element, SubElement, tostring

from invoicing.models import Invoice
from trimops.kernel.money import round_money

NAMESPACE = "urn:iso:std:iso:20022:tech:xsd:camt.053.001.08"
OPENING = Decimal("2140.55")


def bank_statement(invoices: Sequence[Invoice], iban: str, day: date) -> bytes:
    """Each invoice paid on `day`: one by its reference, the next by its number in words, in turn."""
    document = Element("Document", xmlns=NAMESPACE)
    root = SubElement(document, "BkToCstmrStmt")
    _into(root, "GrpHdr", MsgId="DEMO-1", CreDtTm=f"{day}T18:00:00Z")
    statement = _into(root, "Stmt", Id="DEMO-1")
    SubElement(SubElement(SubElement(statement, "Acct"), "Id"), "IBAN").text = iban
    currency = invoices[0].currency if invoices else "GBP"
    paid = sum((round_money(invoice.payable) for invoice in invoices), Decimal(0))
    _balance(statement, "OPBD", OPENING, currency, day)
    _balance(statement, "CLBD", OPENING + paid, currency, day)
    for number, invoice in enumerate(invoices, start=1):
        _entry(statement, invoice, number, day)
    content: bytes = tostring(document, encoding="utf-8", xml_declaration=True)
    return content


def _into(parent: Element, name: str, **parts: str) -> Element:
    made = SubElement(parent, name)
    for part, text in parts.items():
        SubElement(made, part).text = text
    return made


def _balance(statement: Element, code: str, amount: Decimal, currency: str, day: date) -> None:
    made = SubElement(statement, "Bal")
    SubElement(SubElement(SubElement(made, "Tp"), "CdOrPrtry"), "Cd").text = code
    SubElement(made, "Amt", Ccy=currency).text = str(amount)
    SubElement(made, "CdtDbtInd").text = "CRDT"
    SubElement(SubElement(made, "Dt"), "Dt").text = f"{day}"


def _entry(statement: Element, invoice: Invoice, number: int, day: date) -> None:
    entry = SubElement(statement, "Ntry")
    SubElement(entry, "Amt", Ccy=invoice.currency).text = str(round_money(invoice.payable))
    SubElement(entry, "CdtDbtInd").text = "CRDT"
    _into(entry, "Sts", Cd="BOOK")
    _into(entry, "BookgDt", Dt=f"{day}")
    SubElement(entry, "AcctSvcrRef").text = f"DEMO-{day:%Y%m%d}-{number}"
    code = SubElement(SubElement(SubElement(entry, "BkTxCd"), "Domn"), "Cd")
    code.text = "PMNT"
    family = SubElement(entry.findall("BkTxCd/Domn")[0], "Fmly")
    SubElement(family, "Cd").text = "RCDT"
    SubElement(family, "SubFmlyCd").text = "ESCT"
    details = SubElement(SubElement(entry, "NtryDtls"), "TxDtls")
    debtor = SubElement(SubElement(SubElement(details, "RltdPties"), "Dbtr"), "Pty")
    SubElement(debtor, "Nm").text = invoice.buyer["name"]
    told = SubElement(details, "RmtInf")
    if number % 2 and invoice.creditor_reference:
        reference = SubElement(SubElement(told, "Strd"), "CdtrRefInf")
        SubElement(reference, "Ref").text = invoice.creditor_reference
    else:
        SubElement(told, "Ustrd").text = f"invoice {invoice.number.lower()} thank you"
