"""When the earlier versions of what phones wrote at a visit went."""

from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [("visits", "0008_runs_by_itself")]

    operations = [
        migrations.AddField(
            model_name="visit",
            name="versions_dropped_at",
            field=models.DateTimeField(
                blank=True,
                editable=False,
                help_text="Earlier versions of what phones wrote went then; since then it takes nothing more.",
                null=True,
            ),
        ),
    ]
