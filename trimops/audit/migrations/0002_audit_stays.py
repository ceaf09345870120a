"""The database itself refuses to change the trail. See `trimops/audit/models/audit_locks.py`."""

from django.db import migrations

from trimops.audit.models.audit_locks import lock_audit, unlock_audit


class Migration(migrations.Migration):
    dependencies = [("audit", "0001_initial")]

    operations = [migrations.RunPython(lock_audit, unlock_audit)]
