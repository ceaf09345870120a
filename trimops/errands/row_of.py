"""The row that an errand names by its key."""

from typing import TypeVar

from trimops.errands.kinds import Gone
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from trimops.tenancy.unscoped import unscoped

M = TypeVar("M", bound=TenantModel)


def row_of(model: type[M], pk: int, *related: str) -> M:
    """The row of whatever business it is, with what is `related` at hand. Gone where it was erased since."""
    rows: TenantQuerySet[M] = model._default_manager.all()  # type: ignore[assignment]
    with unscoped("an errand is handed one row by its key"):
        row = (rows.select_related(*related) if related else rows).filter(pk=pk).first()
    if row is None:
        raise Gone(f"{model.__name__} {pk}")
    return row
