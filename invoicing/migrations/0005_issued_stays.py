"""The database itself refuses to change what was issued. See `invoicing/models/issued_locks.py`."""

from django.db import migrations

from invoicing.models.issued_locks import lock_issued, unlock_issued


class Migration(migrations.Migration):
    dependencies = [("invoicing", "0004_papers_apart")]

    operations = [migrations.RunPython(lock_issued, unlock_issued)]
