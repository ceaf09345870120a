"""A farm's wishes to be erased."""

from farms.models import Erasure, Farm
from trimops.kernel.scope import Scope


def open_erasure(scope: Scope, farm: Farm) -> Erasure | None:
    """The one that is neither carried out nor withdrawn."""
    rows = Erasure.objects.within(scope).filter(farm=farm, done_at__isnull=True, withdrawn_at__isnull=True)
    return rows.select_related("asked_by").first()


def done_erasure(scope: Scope, farm: Farm) -> Erasure | None:
    """The one that was carried out."""
    rows = Erasure.objects.within(scope).filter(farm=farm, done_at__isnull=False)
    return rows.select_related("done_by").first()
