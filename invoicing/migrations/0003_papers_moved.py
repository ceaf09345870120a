"""The PDF of each issued invoice moves into a row of its own; what is to be paid is the total, as it was printed."""

from django.db import migrations
from django.db.models import F

BEFORE = "Issued before e-invoices were made."


def move_papers(apps, schema_editor):
    """Invoices that have their papers are left alone, so that running it again does nothing."""
    Invoice, Papers = apps.get_model("invoicing", "Invoice"), apps.get_model("invoicing", "InvoicePapers")
    for row in Invoice.objects.filter(state="issued", papers__isnull=True).iterator(chunk_size=50):
        row.papers = Papers.objects.create(
            business_id=row.business_id, pdf=row.pdf, pdf_sha256=row.pdf_sha256, no_xml_because=BEFORE
        )
        row.is_open = row.gross > 0
        row.save(update_fields=["papers", "is_open"])
    Invoice.objects.filter(line_sum=0).update(line_sum=F("net"), payable=F("gross"))


def move_back(apps, schema_editor):
    Invoice = apps.get_model("invoicing", "Invoice")
    for row in Invoice.objects.filter(papers__isnull=False).select_related("papers").iterator(chunk_size=50):
        row.pdf, row.pdf_sha256, row.papers = row.papers.pdf, row.papers.pdf_sha256, None
        row.save(update_fields=["pdf", "pdf_sha256", "papers"])


class Migration(migrations.Migration):
    dependencies = [("invoicing", "0002_money")]

    operations = [migrations.RunPython(move_papers, move_back)]
