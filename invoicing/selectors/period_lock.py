"""Up to which day the books are closed."""

from datetime import date

from invoicing.models import PeriodLock
from trimops.kernel.scope import Scope


def locked_until(scope: Scope) -> date | None:
    """The last day that is locked; None where nothing is. What holds is the newest row."""
    newest = PeriodLock.objects.within(scope).order_by("-id").first()
    return newest.locked_until if newest else None


def lock_history(scope: Scope) -> list[PeriodLock]:
    """Every lock and opening with its reason, the newest first."""
    return list(PeriodLock.objects.within(scope).select_related("by").order_by("-id"))
