from decimal import Decimal as D

from invoicing.documents.mileage_table import mileage_table
from tests.invoicing.documents.book_rows import drive_row


def test_the_log_is_added_up_in_its_unit():
    found = mileage_table([drive_row(), drive_row("7.5", "3.37")], "miles", "GBP")
    assert found.sums() == [("GBP", {"Distance, miles": D("20.0"), "Allowance": D("9.00")})]
    assert {*found.shown, *found.summed} <= set(found.table.headings)


def test_a_mended_drive_keeps_what_stood_there():
    found = mileage_table([drive_row()], "km", "EUR")
    assert found.table.rows[0][found.column("Before it was mended")] is None
