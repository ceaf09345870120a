from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("invoicing", "0003_papers_moved"),
    ]

    operations = [
        migrations.RemoveField(
            model_name="invoice",
            name="pdf",
        ),
        migrations.RemoveField(
            model_name="invoice",
            name="pdf_sha256",
        ),
        migrations.AddConstraint(
            model_name="invoice",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    models.Q(("number", ""), ("papers__isnull", True), ("state", "draft")),
                    models.Q(
                        ("issued_on__isnull", False),
                        ("papers__isnull", False),
                        ("state", "issued"),
                        models.Q(("number", ""), _negated=True),
                    ),
                    _connector="OR",
                ),
                name="issued_invoice_is_complete",
            ),
        ),
    ]
