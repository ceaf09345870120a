"""The last calving that is known of each cow becomes the first of her calvings; its number was never told."""

from django.db import migrations

BATCH = 900


def note_known_calvings(apps, schema_editor):
    """A cow that has a calving on that day already is left alone, so that running it again adds none."""
    Cow, Calving = apps.get_model("farms", "Cow"), apps.get_model("farms", "Calving")
    noted = set(Calving.objects.values_list("cow_id", "calved_on"))
    told = Cow.objects.filter(calved_on__isnull=False).values_list("pk", "business_id", "calved_on")
    rows = [
        Calving(business_id=business, cow_id=cow, calved_on=day)
        for cow, business, day in told.iterator()
        if (cow, day) not in noted
    ]
    Calving.objects.bulk_create(rows, batch_size=BATCH)


def leave_calvings(apps, schema_editor):
    """The day stands on the cow as before; the table of calvings goes with the migration that made it."""


class Migration(migrations.Migration):
    dependencies = [("farms", "0002_herd_over_time")]

    operations = [migrations.RunPython(note_known_calvings, leave_calvings)]
