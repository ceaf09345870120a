"""Columns by which a money mail will name its message; what the message will say may be empty here meanwhile."""

import django.db.models.deletion
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("errands", "0001_initial"),
        ("invoicing", "0005_issued_stays"),
        ("outbox", "0001_initial"),
    ]

    operations = [
        migrations.AddField(
            "sending",
            "outgoing",
            models.OneToOneField(
                null=True,
                on_delete=django.db.models.deletion.CASCADE,
                related_name="money",
                to="outbox.outgoing",
            ),
        ),
        migrations.AddField(
            "sending",
            "link",
            models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.SET_NULL,
                related_name="+",
                to="invoicing.invoicelink",
            ),
        ),
        migrations.AlterField("sending", "address", models.EmailField(max_length=254, null=True)),
        migrations.AlterField("sending", "subject", models.CharField(max_length=200, null=True)),
        migrations.AlterField("sending", "body", models.TextField(null=True)),
        migrations.AlterField(
            "sending", "message_id", models.UUIDField(editable=False, null=True, unique=True)
        ),
        migrations.AlterField("sending", "queued_at", models.DateTimeField(null=True)),
    ]
