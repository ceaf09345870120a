"""What an INSERT or UPDATE of rows of a business may not do, asked by the lock when its SQL is made."""

from typing import Any

from django.db.models.constants import OnConflict

from trimops.kernel.scope import Scope
from trimops.tenancy.errors import MixedBusinesses, ScopeRequired
from trimops.tenancy.links import is_of_another, stray_links
from trimops.tenancy.tables import tenant_tables


def refuse_foreign_insert(query: Any) -> None:
    """No new row may hang on a row of another business, nor may an upsert overwrite one on a key without business."""
    if query.model._meta.db_table not in tenant_tables():
        return
    keys = [getattr(field, "name", field) for field in query.unique_fields]
    if query.on_conflict == OnConflict.UPDATE and "business" not in keys:
        raise ScopeRequired(f"{query.model.__name__}: an upsert must count business among its unique fields.")
    for row in query.objs:
        require_own_links(row)


def require_own_links(row: Any) -> None:
    """MixedBusinesses if a parent that is at hand belongs to another business than the row."""
    if strays := stray_links(row):
        raise MixedBusinesses(f"{', '.join(strays)}: of another business.")


def refuse_moving(query: Any, scope: Scope) -> None:
    """No UPDATE hands a row to another business or hangs it on a row of one."""
    for field, _, value in query.values:
        is_moved = field.column == "business_id" and getattr(value, "pk", value) != scope.business_id
        if is_moved or is_of_another(value, scope.business_id):
            raise MixedBusinesses(f"{field.name}: of another business.")
