"""Rows that are joined must belong together."""

from trimops.tenancy.errors import MixedBusinesses
from trimops.tenancy.models import TenantModel


def same_business(*rows: TenantModel | None) -> bool:
    """Whether all given rows (None is passed over) are of one business."""
    return len({row.business_id for row in rows if row is not None}) <= 1


def require_same_business(*rows: TenantModel | None) -> None:
    """MixedBusinesses unless all given rows (None is passed over) are of one business."""
    if not same_business(*rows):
        raise MixedBusinesses("These belong to different businesses and cannot be joined.")
