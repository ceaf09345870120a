"""What a farm takes out of the money: its papers as they were issued, tables, and its account."""

from collections.abc import Iterator
from datetime import datetime

from farms.models import Farm
from invoicing.documents.statement_pdf import statement_pdf
from invoicing.models import Invoice
from invoicing.selectors.data_of_money import currencies_of, money_tables
from invoicing.selectors.statement_content import statement_content
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.documents.csv_file import csv_file
from visits.documents.spreadsheet import spreadsheet
from visits.selectors.farm_data import file_words

Files = Iterator[tuple[str, bytes]]


def money_handed_over(farm: Farm, at: datetime) -> Files:
    """(name, content) one after the other. Ask before whether who takes it may see money; drafts are not the farm's."""
    scope = Scope(farm.business_id)
    row = Farm.objects.within(scope).select_related("business", "payer").get(pk=farm.pk)
    today = local_day(at, row.business.zone)
    tables = money_tables(row, today)
    for table in tables:
        yield f"money/{table.name}.csv", csv_file(table)
    yield "invoices and payments.xlsx", spreadsheet(tables, at, "Invoices and payments")
    for currency, first in currencies_of(row):
        content = statement_content(scope, row, first, today, at, currency)
        yield f"money/account {currency}.pdf", statement_pdf(content)
    yield from _papers(scope, farm)


def _papers(scope: Scope, farm: Farm) -> Files:
    """Each paper as PDF and, where one could be made, as both kinds of XML."""
    rows = Invoice.objects.within(scope).issued().filter(farm=farm)
    rows = rows.select_related("papers").defer("seller", "buyer", "payment").order_by("pk")
    for row in rows.iterator(chunk_size=20):
        name = f"invoices/{row.issued_on} {file_words(row.number)}"
        if row.papers is None:
            continue
        yield f"{name}.pdf", bytes(row.papers.pdf)
        if row.papers.cii_sha256:
            yield f"{name}, CII.xml", bytes(row.papers.cii)
        if row.papers.ubl_sha256:
            yield f"{name}, UBL.xml", bytes(row.papers.ubl)
