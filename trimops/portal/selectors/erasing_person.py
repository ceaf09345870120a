"""What stands in the way of erasing a person, and what would stay of them."""

from dataclasses import dataclass

from invoicing.models import Invoice
from trimops.accounts.models import Membership, User
from trimops.kernel.scope import Scope
from visits.domain.lone_watch.watch_states import WatchState
from visits.domain.visit_states import VisitState
from visits.models import IssuedReport, LoneWatch, Trim, Visit


@dataclass(frozen=True)
class WhatStays:
    """Work that stays, by somebody without a name; and papers on which their name was printed."""

    trims: int
    reports: int
    invoices: int
    is_needed_elsewhere: bool


def nothing_runs_on(scope: Scope, user: User) -> bool:
    """Whether no visit of theirs is under way and nobody watches over them now. Two queries."""
    watches = LoneWatch.objects.within(scope).filter(trimmer=user).exclude(state=WatchState.ENDED.value)
    if watches.filter(is_by_plan=False).exists():
        return False
    under_way = Visit.objects.within(scope).in_state(VisitState.UNDER_WAY)
    return not under_way.filter(van__trimmer=user).exists()


def what_stays_of(membership: Membership) -> WhatStays:
    """Four queries."""
    scope, user = Scope(membership.business_id), membership.user
    elsewhere = Membership.objects.filter(user=user).exclude(pk=membership.pk)
    return WhatStays(
        Trim.objects.within(scope).filter(recorded_by=user).count(),
        IssuedReport.objects.within(scope).filter(made_by=user).count(),
        Invoice.objects.within(scope).issued().filter(issued_by=user).count(),
        user.is_staff or elsewhere.exists(),
    )
