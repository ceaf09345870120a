"""Watches that are open: of one person, of a business."""

from trimops.accounts.models import User
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import LoneWatch, Visit, WatchRules


def open_watches(scope: Scope) -> TenantQuerySet[LoneWatch]:
    rows = LoneWatch.objects.within(scope)
    return rows.exclude(state=WatchState.ENDED.value)


def watches_of(scope: Scope, trimmer: User) -> TenantQuerySet[LoneWatch]:
    """The open ones over this person, with visit and farm."""
    return open_watches(scope).filter(trimmer=trimmer).select_related("visit__farm")


def asking_watches(scope: Scope, trimmer: User) -> list[LoneWatch]:
    """Those that ask this person whether all is well."""
    return [watch for watch in watches_of(scope, trimmer) if asks(watch)]


def asks(watch: LoneWatch) -> bool:
    """Whether it waits for the trimmer's word."""
    return watch.state in (WatchState.ASKED, WatchState.TOLD)


def open_watch_of(scope: Scope, visit: Visit) -> LoneWatch | None:
    return open_watches(scope).filter(visit=visit).select_related("visit__farm").first()


def rules_in_use(scope: Scope) -> WatchRules | None:
    """The rules of a business that has the watch on."""
    return WatchRules.objects.within(scope).filter(is_on=True).first()
