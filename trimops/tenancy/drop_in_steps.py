"""Many rows dropped in many short transactions: nobody waits long, and the next night goes on where one stopped."""

from typing import Any

from django.db import transaction

from trimops.tenancy.querysets import TenantQuerySet

AT_ONCE = 500


def drop_in_steps(rows: TenantQuerySet[Any], at_once: int = AT_ONCE) -> int:
    """Delete all of `rows` (narrowed to a scope), with what hangs on them; how many of `rows` themselves."""
    dropped = 0
    while True:
        with transaction.atomic():
            ids = list(rows.order_by("pk").values_list("pk", flat=True)[:at_once])
            rows.filter(pk__in=ids).order_by().delete()
        dropped += len(ids)
        if len(ids) < at_once:
            return dropped
