"""What a message says by itself now, and its log, are kept here no more."""

import django.db.models.deletion
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [("invoicing", "0007_move_sendings")]

    operations = [
        migrations.AlterField(
            "sending",
            "outgoing",
            models.OneToOneField(
                on_delete=django.db.models.deletion.CASCADE, related_name="money", to="outbox.outgoing"
            ),
        ),
        migrations.AlterModelOptions("sending", {"ordering": ["-id"]}),
        migrations.RemoveIndex("sending", "sendings_by_state"),
        *(
            migrations.RemoveField("sending", name)
            for name in (
                *(
                    "attachment",
                    "attachment_name",
                    "address",
                    "subject",
                    "body",
                    "message_id",
                    "state",
                    "tries",
                ),
                *(
                    "next_try_at",
                    "began_at",
                    "handed_over_at",
                    "last_words",
                    "left_at",
                    "queued_at",
                    "queued_by",
                ),
            )
        ),
        migrations.DeleteModel("SendingEvent"),
    ]
