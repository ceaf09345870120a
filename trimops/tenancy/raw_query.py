"""SQL written by hand over a tenant model: only inside `unscoped`, asked again each time it runs."""

from typing import Any

from django.db.models.sql import RawQuery

from trimops.tenancy.errors import ScopeRequired
from trimops.tenancy.unscoped import is_unscoped


class LockedRawQuery(RawQuery):
    """Django does not compile a raw query, so this one asks for itself where it hands its SQL to the database."""

    def clone(self, using: Any) -> "LockedRawQuery":
        return LockedRawQuery(self.sql, using, params=self.params)

    def _execute_query(self) -> None:
        if not is_unscoped():
            raise ScopeRequired("SQL written by hand runs only inside unscoped().")
        super()._execute_query()  # type: ignore[misc]
