"""A visit begins: somebody looks out for the trimmer from now on."""

from datetime import datetime, timedelta

from django.db import IntegrityError, transaction

from trimops.accounts.models import User
from visits.domain.lone_watch.expected_end import WorkSoFar, expected_end, grace_of
from visits.models import LoneWatch, Visit, WatchRules
from visits.selectors.lone_watch.open_watches import open_watch_of, rules_in_use
from visits.selectors.lone_watch.watch_facts import is_known_quiet
from visits.services.lone_watch.check_in import go_on_watching
from visits.services.lone_watch.end_watch import say_all_is_well
from visits.services.lone_watch.note_watch import note_watch


@transaction.atomic
def begin_watch(*, visit: Visit, trimmer: User, at: datetime, is_by_plan: bool = False) -> LoneWatch | None:
    """Watch over `trimmer` at this visit, which began (or by the plan should have begun) at `at`; None where the
    business has the watch off. Beginning twice is one watch; a beginning takes over what the plan began.
    """
    rules = rules_in_use(visit.scope)
    if rules is None:
        return None
    watch = open_watch_of(visit.scope, visit)
    if watch is not None:
        return watch if is_by_plan else _take_over(watch, visit, trimmer, at)
    try:
        with transaction.atomic():
            return _open(visit, rules, trimmer, at, is_by_plan)
    except IntegrityError:
        # Two at once: the other one has begun it.
        return open_watch_of(visit.scope, visit)


def _open(visit: Visit, rules: WatchRules, trimmer: User, at: datetime, is_by_plan: bool) -> LoneWatch:
    watch = LoneWatch(business_id=visit.business_id, visit=visit, trimmer=trimmer, van_id=visit.van_id)
    watch.began_at, watch.is_by_plan = at, is_by_plan
    watch.is_quiet_place = is_known_quiet(visit)
    expected = timedelta(minutes=visit.expected_minutes)
    watch.expected_finish = expected_end(WorkSoFar(at, expected, visit.head_count))
    grace = timedelta(minutes=rules.grace_minutes)
    watch.next_at = watch.expected_finish + grace_of(
        grace, is_quiet_place=watch.is_quiet_place, began_at=at, heard_at=None
    )
    watch.save(force_insert=True)
    words = "By the plan the visit begins; nobody has noted it yet" if is_by_plan else "The visit began"
    note_watch(watch=watch, words=f"{words}: {trimmer.name} is watched over.", at=at)
    return watch


def _take_over(watch: LoneWatch, visit: Visit, trimmer: User, at: datetime) -> LoneWatch:
    """The real beginning of what was watched by the plan, perhaps heard of late. It is looked at anew at once."""
    row = watch.locked()
    if row.is_over or not row.is_by_plan:
        return row
    row.is_by_plan, row.began_at, row.trimmer, row.van_id = False, at, trimmer, visit.van_id
    if row.asked_at is not None and at >= row.asked_at:
        say_all_is_well(watch=row, because=f"{trimmer.name} began the visit.", at=at)
        go_on_watching(row, at)
    # Looked at anew at once: it has another beginning now.
    row.next_at = at
    row.save()
    note_watch(watch=row, words=f"The visit began: {trimmer.name} is watched over.", at=at)
    return row
