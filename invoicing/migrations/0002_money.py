import django.core.validators
import django.db.models.deletion
import uuid
from django.conf import settings
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("accounts", "0001_initial"),
        ("farms", "0004_countries"),
        ("invoicing", "0001_initial"),
        ("visits", "0004_farm_papers"),
    ]

    operations = [
        migrations.CreateModel(
            name="InvoicePapers",
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
                ("pdf", models.BinaryField()),
                ("pdf_sha256", models.CharField(max_length=64)),
                ("cii", models.BinaryField(blank=True, default=b"")),
                ("cii_sha256", models.CharField(blank=True, max_length=64)),
                ("ubl", models.BinaryField(blank=True, default=b"")),
                ("ubl_sha256", models.CharField(blank=True, max_length=64)),
                ("no_xml_because", models.CharField(blank=True, max_length=200)),
            ],
            options={
                "verbose_name_plural": "invoice papers",
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(
                            models.Q(
                                models.Q(("cii_sha256", ""), _negated=True),
                                models.Q(("ubl_sha256", ""), _negated=True),
                            ),
                            models.Q(("no_xml_because", ""), _negated=True),
                            _connector="OR",
                        ),
                        name="papers_have_xml_or_say_why_not",
                    )
                ],
                "indexes": [],
            },
        ),
        migrations.AlterModelOptions(
            name="price",
            options={"ordering": ["from_quantity"]},
        ),
        migrations.RemoveConstraint(
            model_name="invoice",
            name="a_visit_is_billed_once",
        ),
        migrations.RemoveConstraint(
            model_name="invoice",
            name="issued_invoice_is_complete",
        ),
        migrations.RemoveConstraint(
            model_name="price",
            name="one_price_per_item_and_list",
        ),
        migrations.AddField(
            model_name="invoice",
            name="allowances",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoice",
            name="buyer_reference",
            field=models.CharField(blank=True, max_length=60),
        ),
        migrations.AddField(
            model_name="invoice",
            name="charges",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoice",
            name="corrects",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="credit_notes",
                to="invoicing.invoice",
            ),
        ),
        migrations.AddField(
            model_name="invoice",
            name="creditor_reference",
            field=models.CharField(blank=True, max_length=25),
        ),
        migrations.AddField(
            model_name="invoice",
            name="home_rate",
            field=models.DecimalField(
                blank=True,
                decimal_places=8,
                help_text="What one unit of the currency is in that of the country's tax, where they differ.",
                max_digits=14,
                null=True,
            ),
        ),
        migrations.AddField(
            model_name="invoice",
            name="is_open",
            field=models.BooleanField(db_index=True, default=False),
        ),
        migrations.AddField(
            model_name="invoice",
            name="issued_at",
            field=models.DateTimeField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name="invoice",
            name="kind",
            field=models.CharField(
                choices=[("invoice", "Invoice"), ("credit_note", "Credit note")],
                db_index=True,
                default="invoice",
                max_length=11,
            ),
        ),
        migrations.AddField(
            model_name="invoice",
            name="line_sum",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoice",
            name="order_number",
            field=models.CharField(blank=True, max_length=40),
        ),
        migrations.AddField(
            model_name="invoice",
            name="papers",
            field=models.OneToOneField(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="invoice",
                to="invoicing.invoicepapers",
            ),
        ),
        migrations.AddField(
            model_name="invoice",
            name="payable",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoice",
            name="payer",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="invoices",
                to="farms.payer",
            ),
        ),
        migrations.AddField(
            model_name="invoice",
            name="payment",
            field=models.JSONField(blank=True, default=dict, help_text="How to pay, as it was printed."),
        ),
        migrations.AddField(
            model_name="invoice",
            name="period_from",
            field=models.DateField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name="invoice",
            name="period_until",
            field=models.DateField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name="invoice",
            name="prepaid",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoice",
            name="reason",
            field=models.CharField(blank=True, help_text="Why a credit note corrects.", max_length=300),
        ),
        migrations.AddField(
            model_name="invoice",
            name="rounding",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoice",
            name="rounding_rule",
            field=models.CharField(
                choices=[
                    ("per_rate", "Once for each rate"),
                    ("per_line", "On each line"),
                    ("total", "Once, on the total"),
                    ("total_down", "Once, on the total, downwards"),
                ],
                default="per_rate",
                max_length=12,
            ),
        ),
        migrations.AddField(
            model_name="invoice",
            name="settled",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoice",
            name="tax_name",
            field=models.CharField(default="VAT", max_length=20),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="allowance",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="allowance_percent",
            field=models.DecimalField(blank=True, decimal_places=4, max_digits=7, null=True),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="allowance_reason",
            field=models.CharField(blank=True, max_length=200),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="credits",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="credited_by",
                to="invoicing.invoiceline",
            ),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="done_on",
            field=models.DateField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="is_by_hand",
            field=models.BooleanField(default=False, help_text="Put in by the office; drafting leaves it."),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="tax_reason",
            field=models.CharField(blank=True, max_length=200),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="tax_reason_code",
            field=models.CharField(blank=True, max_length=30),
        ),
        migrations.AddField(
            model_name="invoiceline",
            name="visit",
            field=models.ForeignKey(
                blank=True,
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="+",
                to="visits.visit",
            ),
        ),
        migrations.AddField(
            model_name="price",
            name="from_quantity",
            field=models.PositiveIntegerField(
                default=1, validators=[django.core.validators.MinValueValidator(1)]
            ),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="guarantee_days",
            field=models.PositiveSmallIntegerField(
                default=0,
                help_text="A re-check of a foot within so many days of its trim is free; 0: none is.",
            ),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="minimum_charge",
            field=models.DecimalField(
                decimal_places=4,
                default=0,
                help_text="A visit is not charged less, before tax.",
                max_digits=14,
                validators=[django.core.validators.MinValueValidator(0)],
            ),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="step_rule",
            field=models.CharField(
                choices=[
                    ("whole", "All at the price of the step reached"),
                    ("slices", "Each slice at its own price"),
                ],
                default="whole",
                help_text="How steps count.",
                max_length=8,
            ),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="travel_rule",
            field=models.CharField(
                choices=[
                    ("none", "Not charged"),
                    ("distance", "By distance from the base and back"),
                    ("band", "By band of distance from the base"),
                    ("shared", "The day's round, shared among its farms"),
                ],
                default="none",
                max_length=8,
            ),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="travel_unit",
            field=models.CharField(
                choices=[("KMT", "kilometre"), ("SMI", "mile")], default="KMT", max_length=3
            ),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="usual_from",
            field=models.TimeField(blank=True, help_text="Before it a visit is out of hours.", null=True),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="usual_until",
            field=models.TimeField(blank=True, help_text="After it a visit is out of hours.", null=True),
        ),
        migrations.AddField(
            model_name="pricelist",
            name="usual_weekdays",
            field=models.CharField(
                default="12345", help_text="Monday is 1; on the others a visit is out of hours.", max_length=7
            ),
        ),
        migrations.AddField(
            model_name="taxrate",
            name="name",
            field=models.CharField(
                blank=True, help_text="What people call it: standard, reduced.", max_length=60
            ),
        ),
        migrations.AddField(
            model_name="taxrate",
            name="reason_code",
            field=models.CharField(blank=True, help_text="Of the VATEX list, if one fits.", max_length=30),
        ),
        migrations.AlterField(
            model_name="invoice",
            name="gross",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AlterField(
            model_name="invoice",
            name="issued_on",
            field=models.DateField(blank=True, db_index=True, null=True),
        ),
        migrations.AlterField(
            model_name="invoice",
            name="net",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AlterField(
            model_name="invoice",
            name="tax",
            field=models.DecimalField(decimal_places=4, default=0, max_digits=14),
        ),
        migrations.AlterField(
            model_name="invoice",
            name="visit",
            field=models.ForeignKey(
                blank=True,
                help_text="The visit it bills, if it is one.",
                null=True,
                on_delete=django.db.models.deletion.PROTECT,
                related_name="invoices",
                to="visits.visit",
            ),
        ),
        migrations.AlterField(
            model_name="invoiceline",
            name="item",
            field=models.CharField(
                choices=[
                    ("functional", "Functional trim"),
                    ("corrective", "Corrective trim"),
                    ("check", "Cow looked at"),
                    ("block", "Block"),
                    ("shoe", "Shoe"),
                    ("wrap", "Wrap"),
                    ("dressing", "Dressing"),
                    ("call_out", "Call-out"),
                    ("urgent", "Urgent visit supplement"),
                    ("out_of_hours", "Out-of-hours supplement"),
                    ("kilometre", "Travel"),
                    ("mile", "Travel"),
                    ("travel", "Travel"),
                    ("minimum", "Up to the minimum charge"),
                    ("other", "Other"),
                ],
                max_length=12,
            ),
        ),
        migrations.AlterField(
            model_name="invoiceline",
            name="net",
            field=models.DecimalField(decimal_places=4, max_digits=14),
        ),
        migrations.AlterField(
            model_name="invoiceline",
            name="quantity",
            field=models.DecimalField(decimal_places=4, max_digits=12),
        ),
        migrations.AlterField(
            model_name="invoiceline",
            name="unit_price",
            field=models.DecimalField(decimal_places=4, max_digits=14),
        ),
        migrations.AlterField(
            model_name="price",
            name="item",
            field=models.CharField(
                choices=[
                    ("functional", "Functional trim"),
                    ("corrective", "Corrective trim"),
                    ("check", "Cow looked at"),
                    ("block", "Block"),
                    ("shoe", "Shoe"),
                    ("wrap", "Wrap"),
                    ("dressing", "Dressing"),
                    ("call_out", "Call-out"),
                    ("urgent", "Urgent visit supplement"),
                    ("out_of_hours", "Out-of-hours supplement"),
                    ("kilometre", "Travel"),
                    ("mile", "Travel"),
                    ("travel", "Travel"),
                    ("minimum", "Up to the minimum charge"),
                    ("other", "Other"),
                ],
                max_length=12,
            ),
        ),
        migrations.AlterField(
            model_name="price",
            name="unit_price",
            field=models.DecimalField(
                decimal_places=4, max_digits=14, validators=[django.core.validators.MinValueValidator(0)]
            ),
        ),
        migrations.AddIndex(
            model_name="invoice",
            index=models.Index(
                fields=["business", "state", "-issued_on", "-id"], name="invoices_newest_first"
            ),
        ),
        migrations.AddIndex(
            model_name="invoice",
            index=models.Index(
                condition=models.Q(("is_open", True)),
                fields=["business", "due_on"],
                name="open_invoices_by_day",
            ),
        ),
        migrations.AddIndex(
            model_name="invoice",
            index=models.Index(fields=["business", "farm", "issued_on"], name="invoices_of_a_farm"),
        ),
        migrations.AddConstraint(
            model_name="invoice",
            constraint=models.UniqueConstraint(
                condition=models.Q(("kind", "invoice"), ("state", "draft"), ("visit__isnull", False)),
                fields=("visit",),
                name="one_draft_per_visit",
            ),
        ),
        migrations.AddConstraint(
            model_name="invoice",
            constraint=models.UniqueConstraint(
                condition=models.Q(
                    ("kind", "invoice"),
                    ("period_from__isnull", False),
                    ("state", "draft"),
                    ("visit__isnull", True),
                ),
                fields=("farm", "period_from", "currency"),
                name="one_draft_per_farm_and_month",
            ),
        ),
        migrations.AddConstraint(
            model_name="invoice",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    models.Q(("corrects__isnull", True), ("kind", "invoice")),
                    models.Q(
                        ("corrects__isnull", False),
                        ("kind", "credit_note"),
                        models.Q(("reason", ""), _negated=True),
                    ),
                    _connector="OR",
                ),
                name="credit_note_points_back_and_says_why",
            ),
        ),
        migrations.AddConstraint(
            model_name="price",
            constraint=models.UniqueConstraint(
                fields=("price_list", "item", "from_quantity"), name="one_price_per_item_step_and_list"
            ),
        ),
        migrations.CreateModel(
            name="Agreement",
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
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="agreements",
                        to="farms.farm",
                    ),
                ),
                (
                    "item",
                    models.CharField(
                        blank=True,
                        choices=[
                            ("functional", "Functional trim"),
                            ("corrective", "Corrective trim"),
                            ("check", "Cow looked at"),
                            ("block", "Block"),
                            ("shoe", "Shoe"),
                            ("wrap", "Wrap"),
                            ("dressing", "Dressing"),
                            ("call_out", "Call-out"),
                            ("urgent", "Urgent visit supplement"),
                            ("out_of_hours", "Out-of-hours supplement"),
                            ("kilometre", "Travel"),
                            ("mile", "Travel"),
                            ("travel", "Travel"),
                            ("minimum", "Up to the minimum charge"),
                            ("other", "Other"),
                        ],
                        max_length=12,
                    ),
                ),
                (
                    "kind",
                    models.CharField(
                        choices=[("percent", "Percent off"), ("price", "A price of its own")], max_length=8
                    ),
                ),
                (
                    "amount",
                    models.DecimalField(
                        decimal_places=4,
                        help_text="Percent off, or the price.",
                        max_digits=14,
                        validators=[django.core.validators.MinValueValidator(0)],
                    ),
                ),
                ("why", models.CharField(help_text="Printed beside the line.", max_length=200)),
                ("valid_from", models.DateField()),
                ("valid_until", models.DateField(blank=True, null=True)),
            ],
            options={
                "ordering": ["-valid_from", "-id"],
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(
                            ("valid_until__isnull", True),
                            ("valid_until__gte", models.F("valid_from")),
                            _connector="OR",
                        ),
                        name="agreement_ends_after_it_begins",
                    )
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="BankFile",
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
                ("file_name", models.CharField(max_length=200)),
                ("sha256", models.CharField(max_length=64)),
                ("content", models.BinaryField()),
                ("kept_at", models.DateTimeField()),
                (
                    "kept_by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                (
                    "read_at",
                    models.DateTimeField(
                        blank=True, help_text="Empty: its columns are not told yet.", null=True
                    ),
                ),
            ],
            options={
                "ordering": ["-kept_at", "-id"],
                "constraints": [
                    models.UniqueConstraint(fields=("business", "sha256"), name="a_bank_file_is_kept_once")
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="BankMapping",
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
                ("columns", models.JSONField(default=dict)),
            ],
            options={
                "ordering": ["name"],
                "constraints": [
                    models.UniqueConstraint(fields=("business", "name"), name="one_bank_mapping_per_name")
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="BilledWork",
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
                    "invoice",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="billed_work",
                        to="invoicing.invoice",
                    ),
                ),
                (
                    "line",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="billed_work",
                        to="invoicing.invoiceline",
                    ),
                ),
                (
                    "visit",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="billed_work",
                        to="visits.visit",
                    ),
                ),
                (
                    "trim",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.SET_NULL,
                        related_name="+",
                        to="visits.trim",
                    ),
                ),
                ("key", models.CharField(max_length=120)),
                (
                    "words",
                    models.CharField(
                        blank=True, help_text="What was done, as it was when drafted.", max_length=200
                    ),
                ),
                ("holds", models.BooleanField(default=True)),
                ("not_billed_because", models.CharField(blank=True, max_length=200)),
                (
                    "credit_line",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.SET_NULL,
                        related_name="lets_go",
                        to="invoicing.invoiceline",
                    ),
                ),
            ],
            options={
                "verbose_name_plural": "billed work",
                "constraints": [
                    models.UniqueConstraint(
                        condition=models.Q(("holds", True)),
                        fields=("business", "key"),
                        name="work_is_billed_once",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            models.Q(("invoice__isnull", False), ("line__isnull", False)),
                            models.Q(
                                ("line__isnull", True), models.Q(("not_billed_because", ""), _negated=True)
                            ),
                            _connector="OR",
                        ),
                        name="unbilled_work_says_why",
                    ),
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="DocumentAmount",
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
                    "invoice",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="document_amounts",
                        to="invoicing.invoice",
                    ),
                ),
                ("is_charge", models.BooleanField(default=False)),
                ("amount", models.DecimalField(decimal_places=4, max_digits=14)),
                ("base", models.DecimalField(blank=True, decimal_places=4, max_digits=14, null=True)),
                ("percent", models.DecimalField(blank=True, decimal_places=4, max_digits=7, null=True)),
                ("reason", models.CharField(max_length=200)),
                ("tax_category", models.CharField(max_length=2)),
                ("tax_percent", models.DecimalField(decimal_places=2, max_digits=5)),
                ("tax_reason", models.CharField(blank=True, max_length=200)),
                ("tax_reason_code", models.CharField(blank=True, max_length=30)),
            ],
            options={
                "ordering": ["id"],
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(("amount__gte", 0)), name="document_amount_is_not_negative"
                    )
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="DraftEdit",
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
                    "invoice",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="edits",
                        to="invoicing.invoice",
                    ),
                ),
                ("at", models.DateTimeField()),
                (
                    "by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("what", models.CharField(help_text="Before and after, in words.", max_length=300)),
                ("reason", models.CharField(max_length=200)),
            ],
            options={
                "ordering": ["at", "id"],
                "indexes": [],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="FarmTerms",
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
                    "farm",
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.CASCADE, related_name="terms", to="farms.farm"
                    ),
                ),
                (
                    "rhythm",
                    models.CharField(
                        choices=[("visit", "Each visit"), ("month", "Each month")],
                        default="visit",
                        max_length=8,
                    ),
                ),
                (
                    "tax_code",
                    models.CharField(
                        blank=True, help_text="Instead of the tax of the price list.", max_length=20
                    ),
                ),
                ("order_number", models.CharField(blank=True, max_length=40)),
                ("buyer_reference", models.CharField(blank=True, max_length=60)),
                (
                    "send_to",
                    models.JSONField(blank=True, default=list, help_text="Addresses that get its papers."),
                ),
                ("sends_xml", models.BooleanField(default=False, verbose_name="the XML goes with the mail")),
                ("payment_days", models.PositiveSmallIntegerField(blank=True, null=True)),
                ("gets_reminders", models.BooleanField(default=True)),
                ("note", models.TextField(blank=True, help_text="For the office only.")),
            ],
            options={
                "abstract": False,
                "indexes": [],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="InvoiceLink",
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
                    "invoice",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="links",
                        to="invoicing.invoice",
                    ),
                ),
                ("secret_hash", models.CharField(max_length=64, unique=True)),
                ("made_at", models.DateTimeField()),
                ("expires_at", models.DateTimeField()),
                ("closed_at", models.DateTimeField(blank=True, null=True)),
                (
                    "opened_at",
                    models.DateTimeField(blank=True, help_text="When it was last opened.", null=True),
                ),
            ],
            options={
                "ordering": ["-made_at", "-id"],
                "indexes": [],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="Journey",
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
                ("on", models.DateField(db_index=True)),
                ("position", models.PositiveSmallIntegerField(default=1)),
                (
                    "van",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="visits.van",
                    ),
                ),
                (
                    "visit",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.SET_NULL,
                        related_name="+",
                        to="visits.visit",
                    ),
                ),
                ("from_words", models.CharField(max_length=120)),
                ("to_words", models.CharField(max_length=120)),
                ("purpose", models.CharField(max_length=200)),
                (
                    "distance",
                    models.DecimalField(
                        decimal_places=1,
                        max_digits=8,
                        validators=[django.core.validators.MinValueValidator(0)],
                    ),
                ),
                ("unit", models.CharField(choices=[("KMT", "kilometre"), ("SMI", "mile")], max_length=3)),
                (
                    "is_by_hand",
                    models.BooleanField(
                        default=False, help_text="Put in by a person, not made from a visit."
                    ),
                ),
                (
                    "reckoned",
                    models.DecimalField(
                        blank=True,
                        decimal_places=1,
                        help_text="What stood there before it was mended.",
                        max_digits=8,
                        null=True,
                    ),
                ),
                ("reckoned_source", models.CharField(blank=True, max_length=120)),
                ("mended_because", models.CharField(blank=True, max_length=200)),
                (
                    "source",
                    models.CharField(help_text="Road map, reckoned, or the odometer.", max_length=120),
                ),
                ("noted_at", models.DateTimeField()),
                (
                    "noted_by",
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
                "ordering": ["on", "position", "id"],
                "indexes": [models.Index(fields=["business", "on"], name="journeys_by_day")],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="LateWork",
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
                    models.OneToOneField(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="late_work",
                        to="visits.visit",
                    ),
                ),
                ("found_at", models.DateTimeField()),
                (
                    "added",
                    models.PositiveSmallIntegerField(help_text="Pieces of work that no invoice bills."),
                ),
                (
                    "gone",
                    models.PositiveSmallIntegerField(
                        help_text="Pieces billed that the work no longer shows."
                    ),
                ),
            ],
            options={
                "verbose_name_plural": "late work",
                "indexes": [],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="MileageRate",
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
                ("valid_from", models.DateField()),
                ("unit", models.CharField(choices=[("KMT", "kilometre"), ("SMI", "mile")], max_length=3)),
                (
                    "first_rate",
                    models.DecimalField(
                        decimal_places=4,
                        max_digits=8,
                        validators=[django.core.validators.MinValueValidator(0)],
                    ),
                ),
                (
                    "up_to",
                    models.PositiveIntegerField(blank=True, help_text="Empty: one rate for all.", null=True),
                ),
                (
                    "then_rate",
                    models.DecimalField(
                        decimal_places=4,
                        default=0,
                        max_digits=8,
                        validators=[django.core.validators.MinValueValidator(0)],
                    ),
                ),
                ("year_begins_month", models.PositiveSmallIntegerField(default=1)),
                ("year_begins_day", models.PositiveSmallIntegerField(default=1)),
                ("source", models.CharField(help_text="Where the rates were read.", max_length=200)),
            ],
            options={
                "ordering": ["-valid_from"],
                "constraints": [
                    models.UniqueConstraint(
                        fields=("business", "valid_from"), name="one_mileage_rate_per_day"
                    )
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="MoneyRules",
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
                    "rounding_rule",
                    models.CharField(
                        choices=[
                            ("per_rate", "Once for each rate"),
                            ("per_line", "On each line"),
                            ("total", "Once, on the total"),
                            ("total_down", "Once, on the total, downwards"),
                        ],
                        default="per_rate",
                        max_length=12,
                    ),
                ),
                (
                    "tax_name",
                    models.CharField(
                        default="VAT", help_text="What the tax is called on papers.", max_length=20
                    ),
                ),
                (
                    "registration_name",
                    models.CharField(blank=True, help_text="Company number, say.", max_length=40),
                ),
                ("registration_number", models.CharField(blank=True, max_length=40)),
                ("invoice_prefix", models.CharField(default="INV", max_length=12)),
                (
                    "credit_prefix",
                    models.CharField(
                        default="CN",
                        help_text="The same as for invoices: one series for both.",
                        max_length=12,
                    ),
                ),
                ("series_by_year", models.BooleanField(default=True, verbose_name="each year begins at 1")),
                ("account_name", models.CharField(blank=True, max_length=70)),
                ("iban", models.CharField(blank=True, max_length=34, verbose_name="IBAN")),
                ("bic", models.CharField(blank=True, max_length=11, verbose_name="BIC")),
                (
                    "credit_terms",
                    models.TextField(blank=True, help_text="Printed on invoices under how to pay."),
                ),
                (
                    "cash_discount_percent",
                    models.DecimalField(
                        decimal_places=2,
                        default=0,
                        max_digits=5,
                        validators=[
                            django.core.validators.MinValueValidator(0),
                            django.core.validators.MaxValueValidator(100),
                        ],
                    ),
                ),
                ("cash_discount_days", models.PositiveSmallIntegerField(default=0)),
                ("logo", models.BinaryField(blank=True, null=True)),
                (
                    "reminder_days",
                    models.JSONField(
                        blank=True,
                        default=list,
                        help_text="Days after the due day of each step, such as 7, 21, 35.",
                    ),
                ),
                (
                    "charges_interest",
                    models.BooleanField(default=False, verbose_name="charge statutory interest"),
                ),
                (
                    "interest_margin",
                    models.DecimalField(
                        decimal_places=2,
                        default=8,
                        help_text="Points above the reference rate.",
                        max_digits=5,
                    ),
                ),
                ("interest_days_in_year", models.PositiveSmallIntegerField(default=365)),
                (
                    "rate_rule",
                    models.CharField(
                        choices=[
                            ("each_day", "The rate of each day, as it changes"),
                            ("last_half", "For each half-year, the rate of 30 June or 31 December before it"),
                            ("first_of_half", "For each half-year, the rate of 1 January or 1 July"),
                            (
                                "at_the_start",
                                "The rate of 30 June or 31 December before interest began, to the end",
                            ),
                        ],
                        default="last_half",
                        max_length=14,
                        verbose_name="which reference rate holds",
                    ),
                ),
                (
                    "fixed_sums",
                    models.JSONField(
                        blank=True,
                        default=list,
                        help_text="Pairs: from this debt on, this sum is claimed once.",
                    ),
                ),
                (
                    "distance_unit",
                    models.CharField(
                        choices=[("KMT", "kilometre"), ("SMI", "mile")], default="KMT", max_length=3
                    ),
                ),
                (
                    "bills_from",
                    models.DateField(
                        blank=True,
                        help_text="Visits finished before that day were billed elsewhere. Empty: every visit.",
                        null=True,
                        verbose_name="bill visits from",
                    ),
                ),
                (
                    "books_begin_month",
                    models.PositiveSmallIntegerField(
                        default=1,
                        help_text="Years and quarters count from it: 2 makes quarters of Feb, May, Aug and Nov.",
                        validators=[
                            django.core.validators.MinValueValidator(1),
                            django.core.validators.MaxValueValidator(12),
                        ],
                        verbose_name="month the books begin",
                    ),
                ),
            ],
            options={
                "verbose_name_plural": "money rules",
                "constraints": [models.UniqueConstraint(fields=("business",), name="one_row_of_money_rules")],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="PeriodLock",
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
                    "locked_until",
                    models.DateField(blank=True, help_text="Empty: nothing is locked.", null=True),
                ),
                ("at", models.DateTimeField()),
                (
                    "by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("why", models.CharField(max_length=200)),
            ],
            options={
                "ordering": ["-at", "-id"],
                "indexes": [],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="ReferenceRate",
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
                ("percent", models.DecimalField(decimal_places=3, max_digits=6)),
                ("valid_from", models.DateField()),
                ("source", models.CharField(help_text="Where the rate was read.", max_length=200)),
            ],
            options={
                "ordering": ["-valid_from"],
                "constraints": [
                    models.UniqueConstraint(
                        fields=("business", "valid_from"), name="one_reference_rate_per_day"
                    )
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="Reminder",
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
                    "invoice",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="reminders",
                        to="invoicing.invoice",
                    ),
                ),
                ("step", models.PositiveSmallIntegerField()),
                (
                    "state",
                    models.CharField(
                        choices=[
                            ("proposed", "To be looked at"),
                            ("approved", "Approved"),
                            ("dropped", "Dropped"),
                        ],
                        db_index=True,
                        default="proposed",
                        max_length=9,
                    ),
                ),
                ("proposed_at", models.DateTimeField()),
                ("decided_at", models.DateTimeField(blank=True, null=True)),
                (
                    "decided_by",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("dropped_because", models.CharField(blank=True, max_length=200)),
                ("open_amount", models.DecimalField(decimal_places=4, default=0, max_digits=14)),
                ("interest", models.DecimalField(decimal_places=4, default=0, max_digits=14)),
                ("fixed_sum", models.DecimalField(decimal_places=4, default=0, max_digits=14)),
                ("reckoned_on", models.DateField(blank=True, null=True)),
                ("working", models.TextField(blank=True, help_text="How the interest was reckoned.")),
                ("pdf", models.BinaryField(blank=True, null=True)),
                ("pdf_sha256", models.CharField(blank=True, max_length=64)),
            ],
            options={
                "ordering": ["-proposed_at", "-id"],
                "constraints": [
                    models.UniqueConstraint(fields=("invoice", "step"), name="each_reminder_step_once")
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="TravelBand",
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
                    "price_list",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="travel_bands",
                        to="invoicing.pricelist",
                    ),
                ),
                ("up_to", models.DecimalField(blank=True, decimal_places=1, max_digits=8, null=True)),
                (
                    "price",
                    models.DecimalField(
                        decimal_places=4,
                        max_digits=14,
                        validators=[django.core.validators.MinValueValidator(0)],
                    ),
                ),
            ],
            options={
                "ordering": [models.OrderBy(models.F("up_to"), nulls_last=True)],
                "constraints": [
                    models.UniqueConstraint(
                        fields=("price_list", "up_to"), name="one_travel_band_per_distance"
                    )
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="BankStatement",
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
                    "file",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="statements",
                        to="invoicing.bankfile",
                    ),
                ),
                ("form", models.CharField(choices=[("camt053", "CAMT.053"), ("csv", "CSV")], max_length=8)),
                ("name", models.CharField(blank=True, help_text="What the bank calls it.", max_length=60)),
                ("account", models.CharField(blank=True, max_length=40)),
                ("currency", models.CharField(blank=True, max_length=3)),
                ("first_day", models.DateField(blank=True, null=True)),
                ("last_day", models.DateField(blank=True, null=True)),
                ("opening", models.DecimalField(blank=True, decimal_places=4, max_digits=16, null=True)),
                ("closing", models.DecimalField(blank=True, decimal_places=4, max_digits=16, null=True)),
                (
                    "known_before",
                    models.PositiveIntegerField(default=0, help_text="Entries that had come already."),
                ),
                ("warnings", models.JSONField(blank=True, default=list)),
                ("read_at", models.DateTimeField()),
                (
                    "read_by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "ordering": ["-read_at", "-id"],
                "indexes": [],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="Sending",
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
                    "paper",
                    models.CharField(
                        choices=[
                            ("invoice", "Invoice"),
                            ("reminder", "Reminder"),
                            ("statement", "Statement of account"),
                        ],
                        max_length=9,
                    ),
                ),
                (
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="sendings", to="farms.farm"
                    ),
                ),
                (
                    "invoice",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="sendings",
                        to="invoicing.invoice",
                    ),
                ),
                (
                    "reminder",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="sendings",
                        to="invoicing.reminder",
                    ),
                ),
                (
                    "attachment",
                    models.BinaryField(blank=True, help_text="Of a statement of account.", null=True),
                ),
                ("attachment_name", models.CharField(blank=True, max_length=100)),
                ("address", models.EmailField(max_length=254)),
                ("with_xml", models.BooleanField(default=False)),
                (
                    "with_link",
                    models.BooleanField(
                        default=False, help_text="The mail ends with a secret address that opens the invoice."
                    ),
                ),
                ("subject", models.CharField(max_length=200)),
                ("body", models.TextField()),
                ("message_id", models.UUIDField(default=uuid.uuid4, editable=False, unique=True)),
                (
                    "state",
                    models.CharField(
                        choices=[
                            ("queued", "Waiting to go"),
                            ("going", "Going now"),
                            ("handed_over", "Handed over"),
                            ("failed", "Did not go"),
                            ("unclear", "Not known whether it went"),
                        ],
                        db_index=True,
                        default="queued",
                        max_length=12,
                    ),
                ),
                ("tries", models.PositiveSmallIntegerField(default=0)),
                ("next_try_at", models.DateTimeField(blank=True, db_index=True, null=True)),
                (
                    "began_at",
                    models.DateTimeField(blank=True, help_text="When it was last begun.", null=True),
                ),
                ("handed_over_at", models.DateTimeField(blank=True, null=True)),
                (
                    "last_words",
                    models.CharField(blank=True, help_text="What the mail server said.", max_length=500),
                ),
                (
                    "left_at",
                    models.DateTimeField(
                        blank=True, help_text="Since then nobody wants it to go any more.", null=True
                    ),
                ),
                ("queued_at", models.DateTimeField()),
                (
                    "queued_by",
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
                "ordering": ["-queued_at", "-id"],
                "indexes": [
                    models.Index(fields=["business", "state", "-queued_at"], name="sendings_by_state")
                ],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="BankEntry",
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
                    "statement",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="entries",
                        to="invoicing.bankstatement",
                    ),
                ),
                ("key", models.CharField(max_length=100)),
                ("booked_on", models.DateField()),
                (
                    "amount",
                    models.DecimalField(
                        decimal_places=4, help_text="Negative: it left the account.", max_digits=16
                    ),
                ),
                ("currency", models.CharField(max_length=3)),
                ("party_name", models.CharField(blank=True, max_length=140)),
                ("party_account", models.CharField(blank=True, max_length=40)),
                ("reference", models.CharField(blank=True, max_length=140)),
                ("text", models.TextField(blank=True)),
                (
                    "charges",
                    models.DecimalField(
                        decimal_places=4,
                        default=0,
                        help_text="Kept back by banks before it was booked.",
                        max_digits=16,
                    ),
                ),
                (
                    "is_reversal",
                    models.BooleanField(default=False, help_text="It takes an earlier booking back."),
                ),
                ("set_aside_at", models.DateTimeField(blank=True, null=True)),
                ("set_aside_because", models.CharField(blank=True, max_length=200)),
            ],
            options={
                "verbose_name_plural": "bank entries",
                "ordering": ["-booked_on", "-id"],
                "indexes": [models.Index(fields=["business", "booked_on"], name="bank_entries_by_day")],
                "constraints": [
                    models.UniqueConstraint(fields=("business", "key"), name="a_bank_entry_comes_once")
                ],
            },
        ),
        migrations.CreateModel(
            name="SendingEvent",
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
                    "sending",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="events",
                        to="invoicing.sending",
                    ),
                ),
                ("at", models.DateTimeField()),
                (
                    "state",
                    models.CharField(
                        choices=[
                            ("queued", "Waiting to go"),
                            ("going", "Going now"),
                            ("handed_over", "Handed over"),
                            ("failed", "Did not go"),
                            ("unclear", "Not known whether it went"),
                        ],
                        max_length=12,
                    ),
                ),
                ("words", models.CharField(blank=True, max_length=500)),
            ],
            options={
                "ordering": ["at", "id"],
                "indexes": [],
                "constraints": [],
            },
        ),
        migrations.CreateModel(
            name="Payment",
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
                    "farm",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="payments", to="farms.farm"
                    ),
                ),
                ("received_on", models.DateField(db_index=True)),
                ("amount", models.DecimalField(decimal_places=4, max_digits=14)),
                ("currency", models.CharField(max_length=3)),
                (
                    "method",
                    models.CharField(
                        choices=[
                            ("bank", "Bank transfer"),
                            ("cash", "Cash"),
                            ("card", "Card"),
                            ("cheque", "Cheque"),
                            ("other", "Otherwise"),
                        ],
                        max_length=8,
                    ),
                ),
                ("reference", models.CharField(blank=True, max_length=140)),
                ("payer_name", models.CharField(blank=True, max_length=140)),
                ("note", models.CharField(blank=True, max_length=300)),
                (
                    "bank_entry",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="payments",
                        to="invoicing.bankentry",
                    ),
                ),
                (
                    "pays_back",
                    models.ForeignKey(
                        blank=True,
                        help_text="The payment whose rest goes back to the farm.",
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="paid_back",
                        to="invoicing.payment",
                    ),
                ),
                ("noted_at", models.DateTimeField()),
                (
                    "noted_by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("taken_back_at", models.DateTimeField(blank=True, null=True)),
                (
                    "taken_back_by",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("taken_back_because", models.CharField(blank=True, max_length=200)),
            ],
            options={
                "ordering": ["-received_on", "-id"],
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(("amount", 0), _negated=True), name="payment_is_not_nothing"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            ("taken_back_at__isnull", True),
                            models.Q(("taken_back_because", ""), _negated=True),
                            _connector="OR",
                        ),
                        name="payment_taken_back_says_why",
                    ),
                    models.CheckConstraint(
                        condition=models.Q(("pays_back__isnull", True), ("amount__lt", 0), _connector="OR"),
                        name="only_money_out_pays_back",
                    ),
                    models.UniqueConstraint(
                        condition=models.Q(("bank_entry__isnull", False), ("taken_back_at__isnull", True)),
                        fields=("bank_entry",),
                        name="bank_entry_is_booked_once",
                    ),
                ],
                "indexes": [],
            },
        ),
        migrations.CreateModel(
            name="Allocation",
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
                    "invoice",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="allocations",
                        to="invoicing.invoice",
                    ),
                ),
                (
                    "kind",
                    models.CharField(
                        choices=[
                            ("payment", "Payment"),
                            ("credit", "Credit note"),
                            ("write_off", "Written off"),
                        ],
                        max_length=9,
                    ),
                ),
                (
                    "payment",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="allocations",
                        to="invoicing.payment",
                    ),
                ),
                (
                    "credit_note",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="set_off",
                        to="invoicing.invoice",
                    ),
                ),
                ("amount", models.DecimalField(decimal_places=4, max_digits=14)),
                ("on", models.DateField()),
                ("reason", models.CharField(blank=True, max_length=200)),
                ("noted_at", models.DateTimeField()),
                (
                    "noted_by",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
                ("undone_at", models.DateTimeField(blank=True, null=True)),
                ("undone_because", models.CharField(blank=True, max_length=200)),
            ],
            options={
                "ordering": ["on", "id"],
                "indexes": [models.Index(fields=["business", "on"], name="allocations_by_day")],
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(("amount__gt", 0)), name="allocation_is_positive"
                    ),
                    models.CheckConstraint(
                        condition=models.Q(
                            models.Q(
                                ("credit_note__isnull", True), ("kind", "payment"), ("payment__isnull", False)
                            ),
                            models.Q(
                                ("credit_note__isnull", False), ("kind", "credit"), ("payment__isnull", True)
                            ),
                            models.Q(
                                ("credit_note__isnull", True),
                                ("kind", "write_off"),
                                ("payment__isnull", True),
                                models.Q(("reason", ""), _negated=True),
                            ),
                            _connector="OR",
                        ),
                        name="allocation_says_what_settles",
                    ),
                ],
            },
        ),
    ]
