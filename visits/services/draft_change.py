"""The one door through which a draft list changes: lock, refusal once the work began, what the visit counts with."""

from datetime import datetime, timedelta

from farms.domain.cow_status import CowStatus
from farms.models import Cow
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.paper.figures import counted
from trimops.tenancy.same_business import require_same_business
from visits.models import Visit
from visits.selectors.draft_cows import GatheredDraft, gather_draft
from visits.selectors.draft_room import draft_room
from visits.selectors.draft_time import minutes_for
from visits.selectors.draft_view import CHANGEABLE, draft_day
from visits.selectors.learned_rule import rule_in_use
from visits.services.count_for_calendars import count_for_calendars
from visits.services.lock_vans import lock_vans
from visits.services.visit_change import add_event
from visits.services.want_invitations import want_invitations


class DraftIsClosed(RuleBroken):
    """The visit is under way, done or called off."""

    code = "draft_is_closed"


class CowCannotCome(RuleBroken):
    """She is on another farm, or has left."""

    code = "cow_cannot_come"


class DayIsFull(RuleBroken):
    """The van takes no more cows that day."""

    code = "day_is_full"


def begin_draft_change(visit: Visit) -> Visit:
    """The visit locked, after all vans, if its list may still change; else DraftIsClosed. Call inside a transaction."""
    lock_vans(scope=visit.scope)
    row = visit.locked()
    if row.visit_state not in CHANGEABLE:
        raise DraftIsClosed(
            f"This visit is {row.visit_state.label.lower()}: its draft list stands. Tell the trimmer at the crush."
        )
    return row


def refuse_strange_cow(visit: Visit, cow: Cow) -> None:
    """CowCannotCome unless she is on the farm of the visit."""
    require_same_business(visit, cow)
    if cow.farm_id != visit.farm_id:
        raise CowCannotCome(f"Cow {cow.number} is on another farm.")
    if not CowStatus(cow.status).is_on_farm:
        raise CowCannotCome(f"Cow {cow.number} has left the farm ({cow.get_status_display().lower()}).")


def draft_now(visit: Visit, at: datetime) -> GatheredDraft:
    """The cows and changes of its list as they stand."""
    return gather_draft(visit, draft_day(visit, at))


def keep_count(visit: Visit, count: int, *, at: datetime, by: User | None, note: str) -> Visit:
    """The locked visit counts with so many cows from now on, and lasts as long as they take, with a line of history.

    A visit with an hour lasts longer only if that moves nobody: else it keeps the minutes planned for it, and its page
    and its list say that there are more cows than the time allows. DayIsFull where the van may not take them.
    """
    order = draft_now(visit, at).order(count)
    more, visit.head_count = count > visit.head_count, count
    visit.corrective_count = min(order.corrective, count)
    minutes = minutes_for(visit, rule_in_use(visit.scope).rule, count, visit.corrective_count)
    if visit.planned_start is None:
        visit.expected_minutes = minutes
    else:
        _fit(visit, visit.planned_start, minutes, more, at)
    visit.changed_at = at
    is_other = count_for_calendars(visit=visit)
    visit.full_clean()
    visit.save()
    if is_other:
        want_invitations(visit=visit, at=at)
    add_event(visit, before=visit.state, at=at, by=by, note=f"{note}; {counted(count, 'cow')} now")
    return visit


def _fit(visit: Visit, start: datetime, minutes: int, more: bool, at: datetime) -> None:
    room = draft_room(visit, at)
    if room is not None and more and not room.has_cows_for(visit.head_count):
        raise DayIsFull(
            "The van takes no more cows that day: strike another, or ask the trimmer for another day."
        )
    if room is not None and room.fits(minutes, visit.head_count):
        visit.expected_minutes = minutes
        visit.planned_finish = start + timedelta(minutes=minutes)
