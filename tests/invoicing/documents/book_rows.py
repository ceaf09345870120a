"""Invented lines of the books."""

from datetime import date
from decimal import Decimal as D

from invoicing.documents.book_content import DriveRow, OpenRow, PaidRow, WriteOffRow
from invoicing.domain.amounts import TaxShare
from invoicing.domain.journal_rows import JournalRow, signed_shares
from invoicing.domain.mileage_allowance import Allowed
from invoicing.domain.settling import PaymentMethod

DAY = date(2026, 3, 2)
USUAL = TaxShare("S", D(20), D("100.00"), D("20.00"))
FREE = TaxShare("E", D(0), D("10.00"), D("0.00"))


def journal_row(*shares: TaxShare, sign: int = 1, number: str = "INV-1", currency: str = "GBP") -> JournalRow:
    signed = signed_shares(shares, sign)
    net, tax = sum((s.taxable for s in signed), D(0)), sum((s.tax for s in signed), D(0))
    corrects = "INV-1" if sign < 0 else ""
    party, farm = "The Estate", "Low Croft"
    return JournalRow(
        1, number, sign < 0, corrects, DAY, DAY, None, party, farm, currency, signed, net, tax, net + tax
    )


def paid_row(amount: str = "50.00", **changes: object) -> PaidRow:
    words: dict[str, object] = {"left": D("10.00"), "settled": (("INV-1", D("40.00")),), **changes}
    return PaidRow(1, DAY, "Low Croft", "", PaymentMethod.BANK, "=1+1", "GBP", D(amount), **words)


def write_off_row(amount: str = "3.00") -> WriteOffRow:
    return WriteOffRow(DAY, "INV-1", "The Estate", "GBP", D(amount), "Gone away")


def open_row(days_late: int, amount: str = "20.00") -> OpenRow:
    return OpenRow(1, "INV-1", "The Estate", "Low Croft", DAY, DAY, days_late, "GBP", D("120.00"), D(amount))


def drive_row(distance: str = "12.5", amount: str = "5.63") -> DriveRow:
    allowed = Allowed(None, D(distance), D(0), D(amount))
    return DriveRow(
        1, DAY, "Van 1", "Yard", "Low Croft", "Visit", D(distance), "reckoned", None, "", False, allowed
    )
