"""One at a time where hours of vans are given away."""

from trimops.kernel.scope import Scope
from visits.models import Van


def lock_vans(*, scope: Scope) -> dict[int, Van]:
    """Every van of the business by key, locked until the transaction ends. Call inside one.

    All of them and always in one order: an hour on one van may move a visit to another, and two who each locked
    one and waited for the other's would wait for ever.
    """
    rows = Van.objects.within(scope).select_for_update(of=("self",)).order_by("pk")
    return {van.pk: van for van in rows}
