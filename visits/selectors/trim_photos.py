"""Photos taken at the crush."""

from uuid import UUID

from trimops.kernel.scope import Scope
from visits.models import TrimPhoto, Visit


def photo_of(scope: Scope, visit: Visit, uid: UUID) -> TrimPhoto | None:
    """The photo of that id on the visit. A farm client does not see those of a cow that was taken back."""
    rows = TrimPhoto.objects.within(scope).filter(visit=visit, uid=uid)
    if scope.is_farm_client:
        rows = rows.filter(trim__isnull=False, trim__taken_back_at__isnull=True)
    return rows.first()
