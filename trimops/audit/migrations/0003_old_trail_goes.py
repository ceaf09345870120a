"""The oldest part of a trail may go, behind a cut. See `trimops/audit/models/audit_cut.py` and `audit_locks.py`."""

import django.db.models.deletion
from django.db import migrations, models

from trimops.audit.models.audit_locks import lock_audit, unlock_audit


class Migration(migrations.Migration):
    dependencies = [("accounts", "0003_open_to_programs"), ("audit", "0002_audit_stays")]

    operations = [
        migrations.RunPython(unlock_audit, lock_audit),
        migrations.CreateModel(
            name="AuditCut",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("position", models.PositiveBigIntegerField(help_text="Of the last entry that went.")),
                ("chain", models.CharField(help_text="The hash over all up to it.", max_length=64)),
                ("entries", models.PositiveBigIntegerField(help_text="How many went with this cut.")),
                ("before", models.DateTimeField(help_text="All of them were written before this.")),
                (
                    "years",
                    models.PositiveSmallIntegerField(
                        help_text="How long the business kept its trail at that time."
                    ),
                ),
                ("cut_at", models.DateTimeField()),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
            ],
            options={
                "verbose_name": "cut of the audit trail",
                "verbose_name_plural": "cuts of the audit trail",
                "ordering": ["business", "position"],
                "constraints": [
                    models.UniqueConstraint(
                        fields=("business", "position"), name="one_audit_cut_at_each_position"
                    )
                ],
            },
        ),
        migrations.RunPython(lock_audit, unlock_audit),
    ]
