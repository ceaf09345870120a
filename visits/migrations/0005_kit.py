"""Places, lots, counts and recipes; blades instead of knives; orders."""

import datetime
import django.core.validators
import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("accounts", "0001_initial"),
        ("accounts", "__first__"),
        ("visits", "0004_farm_papers"),
    ]

    operations = [
        migrations.RemoveConstraint(
            model_name="knife",
            name="one_knife_per_name_and_van",
        ),
        migrations.RenameModel(
            old_name="Knife",
            new_name="Blade",
        ),
        migrations.AlterModelOptions(
            name="blade",
            options={"ordering": ["name"]},
        ),
        migrations.RenameField(
            model_name="sharpening",
            old_name="knife",
            new_name="blade",
        ),
        migrations.AlterField(
            model_name="blade",
            name="van",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="blades",
                to="visits.van",
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="kind",
            field=models.CharField(
                choices=[
                    ("hoof_knife", "Hoof knife"),
                    ("double_edged", "Double-edged knife"),
                    ("loop_knife", "Loop knife"),
                    ("grinder_disc", "Grinder disc"),
                    ("other", "Other blade"),
                ],
                default="hoof_knife",
                max_length=12,
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="hand",
            field=models.CharField(
                choices=[("right", "Right hand"), ("left", "Left hand"), ("either", "Either hand")],
                default="right",
                max_length=6,
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="edge_angle",
            field=models.DecimalField(
                blank=True,
                decimal_places=1,
                help_text="Degrees.",
                max_digits=4,
                null=True,
                validators=[
                    django.core.validators.MinValueValidator(5),
                    django.core.validators.MaxValueValidator(60),
                ],
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="thickness_mm",
            field=models.DecimalField(
                blank=True,
                decimal_places=2,
                help_text="Of the steel behind the bevel, mm.",
                max_digits=4,
                null=True,
                validators=[
                    django.core.validators.MinValueValidator(0.2),
                    django.core.validators.MaxValueValidator(20),
                ],
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="cost",
            field=models.DecimalField(
                blank=True,
                decimal_places=2,
                max_digits=10,
                null=True,
                validators=[django.core.validators.MinValueValidator(0)],
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="hours_limit",
            field=models.DecimalField(
                blank=True,
                decimal_places=1,
                help_text="Of a disc: hours after which it is to be replaced, as its maker or your own practice has it.",
                max_digits=6,
                null=True,
                validators=[django.core.validators.MinValueValidator(0.1)],
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="state",
            field=models.CharField(
                choices=[
                    ("bought", "New, not used yet"),
                    ("in_use", "In use"),
                    ("at_grinding", "At grinding"),
                    ("out_of_use", "Out of use"),
                    ("retired", "Retired"),
                ],
                db_index=True,
                default="bought",
                max_length=12,
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="state_since",
            field=models.DateTimeField(
                default=datetime.datetime(2026, 1, 1, 0, 0, tzinfo=datetime.timezone.utc)
            ),
            preserve_default=False,
        ),
        migrations.AddField(
            model_name="blade",
            name="fault",
            field=models.CharField(
                blank=True,
                choices=[
                    ("cracked", "Cracked"),
                    ("chipped", "Chipped"),
                    ("bent", "Bent"),
                    ("handle", "Handle loose"),
                    ("worn", "Worn away"),
                    ("lost", "Lost"),
                ],
                max_length=8,
            ),
        ),
        migrations.AddField(
            model_name="blade",
            name="note",
            field=models.CharField(blank=True, max_length=200),
        ),
        migrations.AddConstraint(
            model_name="blade",
            constraint=models.UniqueConstraint(fields=("van", "name"), name="one_blade_per_name_and_van"),
        ),
        migrations.AddConstraint(
            model_name="blade",
            constraint=models.UniqueConstraint(
                condition=models.Q(("van__isnull", True)),
                fields=("business", "name"),
                name="one_blade_per_name_in_the_store",
            ),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="method",
            field=models.CharField(
                blank=True,
                choices=[
                    ("stone", "Stone"),
                    ("file", "File"),
                    ("belt", "Belt"),
                    ("wheel", "Wheel"),
                    ("strop", "Strop"),
                    ("sent_away", "Sent away"),
                ],
                max_length=10,
            ),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="grit",
            field=models.PositiveSmallIntegerField(
                blank=True,
                null=True,
                validators=[
                    django.core.validators.MinValueValidator(10),
                    django.core.validators.MaxValueValidator(20000),
                ],
            ),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="angle",
            field=models.DecimalField(
                blank=True,
                decimal_places=1,
                help_text="Degrees.",
                max_digits=4,
                null=True,
                validators=[
                    django.core.validators.MinValueValidator(5),
                    django.core.validators.MaxValueValidator(60),
                ],
            ),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="minutes",
            field=models.DecimalField(
                blank=True,
                decimal_places=1,
                max_digits=5,
                null=True,
                validators=[django.core.validators.MinValueValidator(0)],
            ),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="done_by",
            field=models.CharField(blank=True, help_text="Who sharpened it.", max_length=80),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="felt",
            field=models.CharField(
                blank=True,
                choices=[
                    ("very_sharp", "Very sharp"),
                    ("sharp", "Sharp"),
                    ("fair", "Fair"),
                    ("poor", "Poor"),
                ],
                max_length=10,
            ),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="before",
            field=models.CharField(
                choices=[
                    ("dull", "Dull: it dragged"),
                    ("still_cut", "It still cut"),
                    ("chipped", "Chipped"),
                    ("not_said", "Not said"),
                ],
                default="not_said",
                max_length=10,
            ),
        ),
        migrations.AlterField(
            model_name="sharpening",
            name="cows_since_last",
            field=models.PositiveSmallIntegerField(
                blank=True,
                help_text="Cows of the edge before, counted by hand; empty: by the day's work.",
                null=True,
            ),
        ),
        migrations.AddField(
            model_name="sharpening",
            name="note",
            field=models.CharField(blank=True, max_length=200),
        ),
        migrations.AlterField(
            model_name="consumable",
            name="kind",
            field=models.CharField(
                choices=[
                    ("block", "Blocks"),
                    ("glue", "Glue"),
                    ("wrap", "Wraps"),
                    ("dressing", "Dressings"),
                    ("gloves", "Gloves"),
                    ("disc", "Discs"),
                    ("disinfectant", "Disinfectant"),
                    ("other", "Other"),
                ],
                max_length=12,
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="size",
            field=models.CharField(blank=True, help_text="130 mm, large, 100 mm wide …", max_length=40),
        ),
        migrations.AlterField(
            model_name="consumable",
            name="unit",
            field=models.CharField(
                choices=[("each", "each"), ("pair", "pair"), ("ml", "ml"), ("g", "g")], max_length=12
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="is_active",
            field=models.BooleanField(default=True, verbose_name="in use"),
        ),
        migrations.AddField(
            model_name="consumable",
            name="supplier",
            field=models.CharField(blank=True, max_length=120),
        ),
        migrations.AddField(
            model_name="consumable",
            name="supplier_email",
            field=models.EmailField(blank=True, max_length=254),
        ),
        migrations.AddField(
            model_name="consumable",
            name="pack",
            field=models.DecimalField(
                decimal_places=2,
                default=1,
                help_text="Bought in whole packs of so many.",
                max_digits=8,
                validators=[django.core.validators.MinValueValidator(0.01)],
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="price",
            field=models.DecimalField(
                blank=True,
                decimal_places=2,
                help_text="Of one pack, for the order list.",
                max_digits=10,
                null=True,
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="lead_days",
            field=models.PositiveSmallIntegerField(
                default=5,
                help_text="Days from order to arrival.",
                validators=[django.core.validators.MaxValueValidator(365)],
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="service_percent",
            field=models.DecimalField(
                blank=True,
                decimal_places=1,
                help_text="Chance of not running out; empty: the business's own figure.",
                max_digits=4,
                null=True,
                validators=[
                    django.core.validators.MinValueValidator(50),
                    django.core.validators.MaxValueValidator(99.9),
                ],
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="shelf_days",
            field=models.PositiveSmallIntegerField(
                blank=True,
                help_text="Days it keeps from the day it is bought, where no date is on it.",
                null=True,
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="lowest_celsius",
            field=models.DecimalField(
                blank=True,
                decimal_places=1,
                help_text="Lowest working temperature, as on the label.",
                max_digits=4,
                null=True,
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="grams_per_ml",
            field=models.DecimalField(
                blank=True,
                decimal_places=3,
                help_text="So that use by weight can be told in ml, or the other way round.",
                max_digits=5,
                null=True,
                validators=[
                    django.core.validators.MinValueValidator(0.1),
                    django.core.validators.MaxValueValidator(20),
                ],
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="active_substance",
            field=models.CharField(blank=True, help_text="As on the label.", max_length=80),
        ),
        migrations.AddField(
            model_name="consumable",
            name="dilution",
            field=models.CharField(blank=True, help_text="As on the label: 1:100, 2 % w/v …", max_length=40),
        ),
        migrations.AddField(
            model_name="consumable",
            name="contact_minutes",
            field=models.DecimalField(
                blank=True,
                decimal_places=1,
                help_text="As on the label.",
                max_digits=5,
                null=True,
                validators=[django.core.validators.MinValueValidator(0)],
            ),
        ),
        migrations.AddField(
            model_name="consumable",
            name="note",
            field=models.CharField(blank=True, max_length=300),
        ),
        migrations.AddField(
            model_name="businessfigures",
            name="kit",
            field=models.JSONField(blank=True, default=dict),
        ),
        migrations.CreateModel(
            name="UseRule",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                (
                    "consumable",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="use_rules",
                        to="visits.consumable",
                    ),
                ),
                (
                    "per",
                    models.CharField(
                        choices=[
                            ("block", "block put on"),
                            ("wrap", "foot wrapped"),
                            ("dressing", "dressing"),
                            ("foot", "foot lifted"),
                            ("cow", "cow"),
                            ("visit", "visit"),
                        ],
                        max_length=10,
                    ),
                ),
                (
                    "block_kind",
                    models.CharField(
                        blank=True,
                        choices=[
                            ("wood", "wooden block"),
                            ("rubber", "rubber block"),
                            ("eva", "foam block"),
                            ("shoe", "shoe"),
                        ],
                        help_text="Empty: blocks of every kind.",
                        max_length=8,
                    ),
                ),
                (
                    "quantity",
                    models.DecimalField(
                        decimal_places=2,
                        help_text="In the consumable's unit.",
                        max_digits=8,
                        validators=[django.core.validators.MinValueValidator(0.01)],
                    ),
                ),
            ],
            options={
                "ordering": ["per", "block_kind"],
                "constraints": [
                    models.UniqueConstraint(
                        fields=("consumable", "per", "block_kind"), name="one_use_rule_per_occasion"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("quantity__gt", 0)), name="use_rule_uses_something"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("block_kind", ""), ("per", "block"), _connector="OR"),
                        name="block_kind_is_of_blocks",
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="StockPlace",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                ("name", models.CharField(max_length=60)),
                (
                    "van",
                    models.OneToOneField(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="stock_place",
                        to="visits.van",
                    ),
                ),
            ],
            options={
                "ordering": [models.OrderBy(models.F("van_id"), nulls_first=True)],
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("van__isnull", True)),
                        fields=("business",),
                        name="one_store_per_business",
                    )
                ],
            },
        ),
        migrations.CreateModel(
            name="StockLot",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                (
                    "consumable",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="lots",
                        to="visits.consumable",
                    ),
                ),
                ("code", models.CharField(blank=True, help_text="As on the label.", max_length=60)),
                ("expires_on", models.DateField(blank=True, null=True)),
                ("bought_on", models.DateField()),
                ("supplier", models.CharField(blank=True, max_length=120)),
            ],
            options={
                "ordering": [models.OrderBy(models.F("expires_on"), nulls_last=True), "bought_on", "id"],
            },
        ),
        migrations.CreateModel(
            name="StockCount",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                (
                    "consumable",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="counts",
                        to="visits.consumable",
                    ),
                ),
                (
                    "place",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="counts",
                        to="visits.stockplace",
                    ),
                ),
                (
                    "counted",
                    models.DecimalField(
                        decimal_places=2,
                        max_digits=10,
                        validators=[django.core.validators.MinValueValidator(0)],
                    ),
                ),
                ("at", models.DateTimeField()),
                ("note", models.CharField(blank=True, max_length=200)),
                (
                    "by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("noted_at", models.DateTimeField()),
                (
                    "uid",
                    models.UUIDField(
                        default=uuid.uuid4,
                        help_text="Made by the form, so that sending it twice counts once.",
                    ),
                ),
            ],
            options={
                "ordering": ["at", "id"],
                "constraints": [
                    models.UniqueConstraint(
                        fields=("business", "uid", "consumable"), name="count_arrives_once"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("counted__gte", 0)), name="nobody_counts_below_nought"
                    ),
                ],
            },
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="place",
            field=models.ForeignKey(
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="movements",
                to="visits.stockplace",
            ),
        ),
        migrations.AlterField(
            model_name="stockmovement",
            name="kind",
            field=models.CharField(
                choices=[
                    ("bought", "Bought"),
                    ("moved", "Moved"),
                    ("used", "Used"),
                    ("counted", "Counted"),
                    ("written_off", "Written off"),
                ],
                max_length=12,
            ),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="lot",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="movements",
                to="visits.stocklot",
            ),
        ),
        migrations.AlterField(
            model_name="stockmovement",
            name="cost",
            field=models.DecimalField(
                blank=True,
                decimal_places=2,
                help_text="Of the whole quantity bought, without tax.",
                max_digits=10,
                null=True,
            ),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="use_of",
            field=models.CharField(
                blank=True,
                choices=[
                    ("cow", "counted from a cow"),
                    ("visit", "counted from a visit"),
                    ("wash", "mixed for a wash-down"),
                    ("by_hand", "corrected by hand"),
                ],
                max_length=8,
            ),
        ),
        migrations.AlterField(
            model_name="stockmovement",
            name="visit",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="consumables_used",
                to="visits.visit",
            ),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="count",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="movements",
                to="visits.stockcount",
            ),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="because",
            field=models.CharField(
                blank=True,
                choices=[
                    ("expired", "Past its date"),
                    ("broken", "Broken or spoilt"),
                    ("lost", "Lost"),
                    ("given", "Given away"),
                    ("other", "Other"),
                ],
                max_length=8,
            ),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="note",
            field=models.CharField(blank=True, max_length=200),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="by",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to=settings.AUTH_USER_MODEL,
            ),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="noted_at",
            field=models.DateTimeField(null=True),
        ),
        migrations.AddField(
            model_name="stockmovement",
            name="uid",
            field=models.UUIDField(
                blank=True, help_text="Made by the form, so that sending it twice books once.", null=True
            ),
        ),
        migrations.CreateModel(
            name="SupplyOrder",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                ("supplier", models.CharField(blank=True, max_length=120)),
                ("ordered_at", models.DateTimeField()),
                (
                    "by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("mailed_to", models.EmailField(blank=True, max_length=254)),
                ("note", models.CharField(blank=True, max_length=300)),
                ("called_off_at", models.DateTimeField(blank=True, null=True)),
                ("uid", models.UUIDField(default=uuid.uuid4)),
            ],
            options={
                "ordering": ["-ordered_at", "-id"],
                "constraints": [
                    models.UniqueConstraint(fields=("business", "uid"), name="order_is_placed_once")
                ],
            },
        ),
        migrations.CreateModel(
            name="SupplyLine",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                (
                    "order",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="lines",
                        to="visits.supplyorder",
                    ),
                ),
                (
                    "consumable",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="supply_lines",
                        to="visits.consumable",
                    ),
                ),
                ("quantity", models.DecimalField(decimal_places=2, max_digits=10)),
                ("arrived", models.DecimalField(decimal_places=2, default=0, max_digits=10)),
                ("expected_on", models.DateField()),
                (
                    "closed_at",
                    models.DateTimeField(blank=True, help_text="All came, or the rest will not.", null=True),
                ),
            ],
            options={
                "constraints": [
                    models.UniqueConstraint(
                        fields=("order", "consumable"), name="one_line_per_order_and_consumable"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("quantity__gt", 0)), name="something_is_ordered"
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="TypedWeather",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                ("day", models.DateField()),
                ("lowest_celsius", models.DecimalField(decimal_places=1, max_digits=4)),
                (
                    "highest_celsius",
                    models.DecimalField(blank=True, decimal_places=1, max_digits=4, null=True),
                ),
                (
                    "by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("noted_at", models.DateTimeField()),
            ],
            options={
                "constraints": [
                    models.UniqueConstraint(fields=("business", "day"), name="one_typed_weather_per_day"),
                    models.CheckConstraint(
                        condition=models.Q(
                            ("highest_celsius__isnull", True),
                            ("highest_celsius__gte", models.F("lowest_celsius")),
                            _connector="OR",
                        ),
                        name="highest_is_not_below_lowest",
                    ),
                ],
            },
        ),
        migrations.CreateModel(
            name="BladeEvent",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                (
                    "blade",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE, related_name="events", to="visits.blade"
                    ),
                ),
                (
                    "state",
                    models.CharField(
                        choices=[
                            ("bought", "New, not used yet"),
                            ("in_use", "In use"),
                            ("at_grinding", "At grinding"),
                            ("out_of_use", "Out of use"),
                            ("retired", "Retired"),
                        ],
                        max_length=12,
                    ),
                ),
                (
                    "fault",
                    models.CharField(
                        blank=True,
                        choices=[
                            ("cracked", "Cracked"),
                            ("chipped", "Chipped"),
                            ("bent", "Bent"),
                            ("handle", "Handle loose"),
                            ("worn", "Worn away"),
                            ("lost", "Lost"),
                        ],
                        max_length=8,
                    ),
                ),
                ("note", models.CharField(blank=True, max_length=200)),
                ("at", models.DateTimeField()),
                (
                    "by",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "ordering": ["at", "id"],
            },
        ),
        migrations.CreateModel(
            name="BladeTurn",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                (
                    "visit",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="blade_turns",
                        to="visits.visit",
                    ),
                ),
                ("record", models.UUIDField()),
                ("at", models.DateTimeField()),
                (
                    "by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "ordering": ["at", "id"],
                "constraints": [
                    models.UniqueConstraint(fields=("business", "record"), name="one_row_per_blade_turn")
                ],
            },
        ),
        migrations.CreateModel(
            name="BladeSaid",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                (
                    "business",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="+", to="accounts.business"
                    ),
                ),
                (
                    "turn",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="said",
                        to="visits.bladeturn",
                    ),
                ),
                (
                    "blade",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="said", to="visits.blade"
                    ),
                ),
                (
                    "part",
                    models.CharField(
                        choices=[
                            ("in_hand", "in hand"),
                            ("went_dull", "went dull"),
                            ("cracked", "cracked"),
                            ("chipped", "chipped"),
                        ],
                        max_length=10,
                    ),
                ),
            ],
            options={
                "constraints": [
                    models.UniqueConstraint(fields=("turn", "blade", "part"), name="each_part_once_per_turn")
                ],
            },
        ),
        migrations.AddField(
            model_name="washdown",
            name="consumable",
            field=models.ForeignKey(
                blank=True,
                help_text="Which of the stock was mixed; empty: the farm's own, or not said.",
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="wash_downs",
                to="visits.consumable",
            ),
        ),
        migrations.AddField(
            model_name="washdown",
            name="litres",
            field=models.DecimalField(
                blank=True, decimal_places=1, help_text="Of what was mixed.", max_digits=6, null=True
            ),
        ),
        migrations.AlterModelOptions(
            name="sharpening",
            options={"ordering": ["at", "id"]},
        ),
        migrations.AlterField(
            model_name="crushwriting",
            name="kind",
            field=models.CharField(
                choices=[
                    ("cow", "Cow"),
                    ("wash", "Wash-down"),
                    ("kit", "Kit used"),
                    ("blade", "Blades in hand"),
                    ("sign_off", "Sign-off"),
                ],
                max_length=8,
            ),
        ),
    ]
