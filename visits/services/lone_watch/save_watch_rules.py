"""The watch is switched on or off, and its minutes are set."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.lone_watch.watch_states import WatchEnd
from visits.models import WatchRules
from visits.selectors.lone_watch.open_watches import open_watches
from visits.selectors.lone_watch.why_nobody_is_told import why_nobody_is_told
from visits.services.lone_watch.end_watch import end_watch


class CannotTellAnybody(RuleBroken):
    """Switched on it would only seem to watch."""

    code = "cannot_tell_anybody"


@dataclass(frozen=True)
class WatchWish:
    """What the business wants; minutes from 5 to 240."""

    is_on: bool
    watches_plan: bool
    grace_minutes: int
    answer_minutes: int
    repeat_minutes: int


@transaction.atomic
def save_watch_rules(*, business: Business, wish: WatchWish, at: datetime, by: User) -> WatchRules:
    """Keep it. CannotTellAnybody: switched on where nothing can leave this machine, nobody keeps the time, or a van
    has nobody to tell. Switched off, open watches end.
    """
    scope = Scope(business.pk)
    if wish.is_on and (why := why_nobody_is_told(scope, at)):
        raise CannotTellAnybody(why)
    row = WatchRules.objects.within(scope).first() or WatchRules(business=business)
    row.is_on, row.watches_plan = wish.is_on, wish.watches_plan
    row.grace_minutes, row.answer_minutes = wish.grace_minutes, wish.answer_minutes
    row.repeat_minutes, row.changed_at, row.changed_by = wish.repeat_minutes, at, by
    row.full_clean()
    row.save()
    if not wish.is_on:
        for watch in open_watches(scope):
            end_watch(
                watch=watch, how=WatchEnd.NOT_THERE, because=f"{by.name} switched the watch off.", at=at
            )
    return row
