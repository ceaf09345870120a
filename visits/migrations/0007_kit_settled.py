"""What the places replaced goes; the rules of the ledger."""

import django.db.models.deletion
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("visits", "0006_kit_into_places"),
    ]

    operations = [
        migrations.AlterField(
            model_name="stockmovement",
            name="place",
            field=models.ForeignKey(
                on_delete=django.db.models.deletion.PROTECT, related_name="movements", to="visits.stockplace"
            ),
        ),
        migrations.AlterField(
            model_name="stockmovement",
            name="noted_at",
            field=models.DateTimeField(),
        ),
        migrations.RemoveField(
            model_name="stockmovement",
            name="van",
        ),
        migrations.RemoveField(
            model_name="consumable",
            name="block_kind",
        ),
        migrations.RemoveField(
            model_name="consumable",
            name="used_per_block",
        ),
        migrations.RemoveField(
            model_name="blade",
            name="retired_on",
        ),
        migrations.AddIndex(
            model_name="stockmovement",
            index=models.Index(fields=["consumable", "at", "id"], name="ledger_in_its_order"),
        ),
        migrations.AddConstraint(
            model_name="stockmovement",
            constraint=models.UniqueConstraint(
                condition=models.Q(("lot__isnull", False), ("uid__isnull", False)),
                fields=("business", "uid", "consumable", "place", "lot"),
                name="movement_of_a_lot_arrives_once",
            ),
        ),
        migrations.AddConstraint(
            model_name="stockmovement",
            constraint=models.UniqueConstraint(
                condition=models.Q(("lot__isnull", True), ("uid__isnull", False)),
                fields=("business", "uid", "consumable", "place"),
                name="movement_arrives_once",
            ),
        ),
        migrations.AddConstraint(
            model_name="stockmovement",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    models.Q(("kind", "bought"), ("lot__isnull", False), ("quantity__gt", 0)),
                    models.Q(("kind", "used"), ("lot__isnull", True), ("use_of__gt", "")),
                    models.Q(("count__isnull", False), ("kind", "counted")),
                    models.Q(("kind", "moved"), ("uid__isnull", False)),
                    models.Q(("because__gt", ""), ("kind", "written_off"), ("quantity__lt", 0)),
                    _connector="OR",
                ),
                name="movement_says_what_it_is",
            ),
        ),
        migrations.AddConstraint(
            model_name="stockmovement",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    ("cost__isnull", True), models.Q(("cost__gte", 0), ("kind", "bought")), _connector="OR"
                ),
                name="only_what_is_bought_has_a_cost",
            ),
        ),
        migrations.AddConstraint(
            model_name="stockmovement",
            constraint=models.CheckConstraint(
                condition=models.Q(("quantity", 0), _negated=True), name="movement_moves_something"
            ),
        ),
    ]
