"""How long the trail is kept, and what phones wrote at the crush; a trail never goes before the books."""

import django.core.validators
from django.db import migrations, models

NEVER_BEFORE_THE_BOOKS = (
    "UPDATE portal_retentionrules SET trail_years = books_years WHERE trail_years < books_years"
)


class Migration(migrations.Migration):
    dependencies = [("portal", "0001_initial")]

    operations = [
        migrations.AddField(
            model_name="retentionrules",
            name="crush_months",
            field=models.PositiveSmallIntegerField(
                default=36,
                help_text="What counted in the end stays. A visit whose earlier versions went takes no more cows.",
                validators=[
                    django.core.validators.MinValueValidator(6),
                    django.core.validators.MaxValueValidator(360),
                ],
                verbose_name="months for what phones wrote at the crush",
            ),
        ),
        migrations.AddField(
            model_name="retentionrules",
            name="trail_years",
            field=models.PositiveSmallIntegerField(
                default=10,
                help_text="What is older is cut from the trail, and a seal says so. Never shorter than the books.",
                validators=[
                    django.core.validators.MinValueValidator(3),
                    django.core.validators.MaxValueValidator(30),
                ],
                verbose_name="years for who changed what",
            ),
        ),
        migrations.RunSQL(NEVER_BEFORE_THE_BOOKS, migrations.RunSQL.noop),
    ]
