"""What was issued is not changed, not even by SQL; drafts are, and what was paid is. On both databases."""

import pytest
from django.db import IntegrityError, connection, transaction

from invoicing.domain.frozen_columns import INVOICE_STAYS
from invoicing.models import BilledWork, DocumentAmount, Invoice, InvoiceLine
from invoicing.models.issued_locks import locks, missing_locks
from invoicing.models.stays import IssuedStays
from tests.factories import finished
from tests.invoicing.drafts import issue, plain_draft

CHANGES = [
    ("invoicing_invoice", "gross = gross + 1"),
    ("invoicing_invoice", "number = 'INV-1'"),
    ("invoicing_invoice", "state = 'draft', number = '', papers_id = NULL"),
    ("invoicing_invoice", "issued_on = '2025-01-01'"),
    ("invoicing_invoice", "buyer = '{}'"),
    ("invoicing_invoice", "note = 'by hand'"),
    ("invoicing_invoiceline", "quantity = 2"),
    ("invoicing_invoiceline", "description = 'other'"),
    ("invoicing_invoicepapers", "pdf_sha256 = ''"),
    ("invoicing_documentamount", "amount = 1"),
]


def sql(statement):
    with transaction.atomic(), connection.cursor() as cursor:
        cursor.execute(statement)


@pytest.fixture
def with_a_discount(house):
    """A draft with a discount of nothing on the whole."""
    row = plain_draft(house)
    DocumentAmount.objects.create(
        business=house.business, invoice=row, amount=0, reason="None", tax_category="S", tax_percent=20
    )
    return row


def test_the_database_refuses_to_change_what_was_issued(house, with_a_discount):
    issue(with_a_discount, house)
    for table, change in CHANGES:
        with pytest.raises(IntegrityError, match=r"never changed|left the house"):
            sql(f"UPDATE {table} SET {change}")


def test_every_column_of_an_issued_invoice_but_what_was_paid_is_locked(house):
    issue(plain_draft(house), house)
    columns = [field.column for field in Invoice._meta.concrete_fields if field.column != "id"]
    free, said = set(), set()
    for column in columns:
        try:
            with transaction.atomic(), connection.cursor() as cursor:
                cursor.execute(f"UPDATE invoicing_invoice SET {column} = {_other(column)}")
                free.add(column)
                transaction.set_rollback(True)
        except IntegrityError as refused:
            said.add(str(refused).partition("\n")[0])
    assert said == {INVOICE_STAYS}
    assert free == {"settled", "is_open"}


def _other(column):
    """Another value of the column's own kind, in SQL of both databases."""
    kind = Invoice._meta.get_field(column.removesuffix("_id")).get_internal_type()
    words = {"DateField": "'2001-01-01'", "DateTimeField": "'2001-01-01 00:00:00+00'", "JSONField": "'[1]'"}
    if kind == "BooleanField":
        return f"NOT {column}"
    if kind in ("ForeignKey", "OneToOneField", "DecimalField"):
        return f"COALESCE({column}, 0) + 1"
    return words.get(kind, "'zz'")


def test_what_was_paid_may_change_and_an_invoice_saved_as_it_is_passes(house):
    row = issue(plain_draft(house), house)
    sql("UPDATE invoicing_invoice SET settled = 5, is_open = FALSE")
    row.refresh_from_db()
    row.save()
    assert row.settled == 5


def test_a_draft_changes_beside_an_issued_one(house):
    issue(plain_draft(house), house)
    other = plain_draft(house)
    sql(f"UPDATE invoicing_invoice SET note = 'by hand' WHERE id = {other.pk}")
    sql(f"UPDATE invoicing_invoiceline SET description = 'other' WHERE invoice_id = {other.pk}")
    assert other.lines.within(house.scope).first().description == "other"


def test_no_line_comes_to_an_issued_invoice_or_leaves_it(house):
    row = issue(plain_draft(house), house)
    line = plain_draft(house).lines.within(house.scope).first()
    with pytest.raises(IntegrityError, match="never changed"):
        sql(f"UPDATE invoicing_invoiceline SET invoice_id = {row.pk}, position = 99 WHERE id = {line.pk}")
    line.pk, line.invoice, line.position = None, row, 99
    with pytest.raises(IntegrityError, match="never changed"), transaction.atomic():
        line.save()


def test_an_issued_invoice_and_its_lines_are_not_deleted(house):
    row = issue(plain_draft(house), house)
    rows, lines = Invoice.objects.within(house.scope), InvoiceLine.objects.within(house.scope)
    done = finished(house.farm, house.van)
    claims = BilledWork.objects.within(house.scope)
    claim = claims.create(business=house.business, invoice=row, line=lines.first(), visit=done, key="k")
    for delete in (row.delete, rows.delete, lines.delete, lines.first().delete, claims.delete, claim.delete):
        with pytest.raises(IssuedStays, match="credit note"):
            delete()
    plain_draft(house).delete()
    assert rows.get().pk == row.pk


@pytest.mark.parametrize("vendor", ["sqlite", "postgresql"])
def test_a_lock_names_every_frozen_column(vendor):
    columns = [field.column for field in Invoice._meta.concrete_fields]
    when = next(locks(columns, vendor)).when
    assert all(f"OLD.{column} " in when for column in columns if column not in ("settled", "is_open"))


def test_every_lock_stands_in_the_database(db):
    """Made by the migrations in a full run: one that alters a locked table must put them back."""
    assert missing_locks(connection) == []
