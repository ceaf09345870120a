"""What the program does by itself for a business, and how it stands, a line each."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from trimops.accounts.actions import Action
from trimops.accounts.models import Business
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.errands.selectors.newest_backup import newest_backup
from trimops.errands.selectors.stuck_errands import stuck_rows
from trimops.jobs import DAILY
from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import WebhookAddress
from trimops.outbox.selectors.outgoing_rows import outgoing_counts
from trimops.paper.figures import counted
from visits.models import CalendarAddress, MessageRules, OutsideCalendar
from visits.selectors.lone_watch.open_watches import open_watches, rules_in_use
from visits.selectors.lone_watch.ways_out import ways_out
from visits.selectors.lone_watch.why_nobody_is_told import why_nobody_is_told

LOOK_BACK = timedelta(days=2)
OLD_BACKUP = timedelta(days=2)
Allows = Callable[[Action], bool]


@dataclass(frozen=True)
class Part:
    """One thing that runs by itself: `url_name` is where it is set; `mark` one of the house's marks."""

    name: str
    says: str
    url_name: str
    mark: str
    word: str


@dataclass(frozen=True)
class DailyLine:
    """A daily job and when it was last done; None where it has not been since two days ago."""

    what: str
    clock: str
    done_at: datetime | None
    state: ErrandState | None


def parts_of(business: Business, allows: Allows, now: datetime) -> list[Part]:
    """Those that somebody may open, by what they are allowed."""
    scope = Scope(business.pk)
    parts = [*_messages(scope, allows), _leaving(scope, allows), _watch(scope, now), *_calendars(scope)]
    return [*parts, *(_owners(scope, business, now) if allows(Action.KEEP_BUSINESS) else ())]


def daily_lines(business: Business, now: datetime) -> list[DailyLine]:
    """In the order of the day, by the business's own clock."""
    rows = Errand.objects.within(Scope(business.pk)).filter(day__isnull=False, queued_at__gt=now - LOOK_BACK)
    newest = {row.job: row for row in rows.order_by("day", "id")}
    done = {row.job: row.ended_at for row in rows.filter(state=ErrandState.DONE.value).order_by("ended_at")}
    return [
        DailyLine(
            job.label,
            f"{clock:%H:%M}",
            done.get(job.value),
            ErrandState(newest[job.value].state) if job.value in newest else None,
        )
        for job, clock in DAILY.items()
    ]


def _messages(scope: Scope, allows: Allows) -> Iterator[Part]:
    if not allows(Action.KEEP_MESSAGES):
        return
    rules = MessageRules.objects.within(scope).first()
    count = len(rules.switched_on) if rules else 0
    says = f"Switched on: {counted(count, 'kind')} of message."
    if not count:
        says = "Nothing goes to farms by itself until you switch it on: booked, moved, tomorrow, on the way, late."
    yield _part("Messages to farms", says, "messages", bool(count))


def _leaving(scope: Scope, allows: Allows) -> Part:
    topics = [topic for topic in Topic if allows(Action.SEE_MONEY) or not topic.tells_money]
    counts = outgoing_counts(scope, topics)
    waits = f"{counts.waiting or 'nothing'} wait{'' if counts.waiting > 1 else 's'}"
    if counts.failed:
        return Part(
            "What goes out", f"{counts.failed} did not go, {waits}.", "outgoing_list", "urgent", "Look"
        )
    if Channel.MAIL not in ways_out():
        says = f"No mail server is set, so mails reach nobody: they lie in the mail folder; {waits}."
        return Part("What goes out", says, "outgoing_list", "due", "Reaches nobody")
    return Part("What goes out", f"All went, {waits}.", "outgoing_list", "done", "Well")


def _watch(scope: Scope, now: datetime) -> Part:
    rules = rules_in_use(scope)
    if rules is None:
        says = "Nobody is told when somebody who works alone does not finish. It replaces no emergency call."
        return _part("Lone-worker watch", says, "watch", False)
    if why := why_nobody_is_told(scope, now):
        return Part("Lone-worker watch", why, "watch", "urgent", "Look")
    says = f"{counted(open_watches(scope).count(), 'visit')} watched now. It replaces no emergency call."
    return _part("Lone-worker watch", says, "watch", True)


def _calendars(scope: Scope) -> Iterator[Part]:
    count = CalendarAddress.objects.within(scope).filter(revoked_at__isnull=True).count()
    says = f"Shown at {counted(count, 'address', 'addresses')}."
    yield _part(
        "Visits in your calendar", says if count else "No calendar shows the visits.", "calendar", bool(count)
    )
    rows = OutsideCalendar.objects.within(scope)
    count, failed = rows.count(), rows.exclude(last_words="").count()
    says = f"{count} read for days off{f', {failed} could not be read' if failed else ''}."
    if failed:
        yield Part("Days off from outside calendars", says, "vans", "urgent", "Look")
        return
    says = says if count else "No calendar is read."
    yield _part("Days off from outside calendars", says, "vans", bool(count))


def _owners(scope: Scope, business: Business, now: datetime) -> Iterator[Part]:
    says = (
        "Each evening the coming days are planned, as a proposal."
        if business.proposes_weeks
        else "The week is planned when you ask for it."
    )
    yield _part("Evening plan", says, "business", business.proposes_weeks)
    count = WebhookAddress.objects.within(scope).filter(closed_at__isnull=True).count()
    says = f"{count} told of what happens here." if count else "No program is told of what happens here."
    yield _part("Other programs", says, "webhooks", bool(count))
    stuck = stuck_rows(scope).count()
    if stuck:
        yield Part("What got stuck", f"{stuck} could not be done.", "stuck", "urgent", "Look")
    else:
        yield Part("What got stuck", "Nothing.", "stuck", "done", "Well")
    yield _backup(now)


def _backup(now: datetime) -> Part:
    """When the newest backup that was tried out was made, of the whole site."""
    made = newest_backup()
    if made is None:
        return Part("Backup", "There is none that was tried out yet.", "", "due", "Not yet")
    hours = int((now - made).total_seconds() // 3600)
    old = now - made > OLD_BACKUP
    says = f"The newest is {counted(hours, 'hour')} old; it was restored for a trial."
    return Part("Backup", says, "", "urgent" if old else "done", "Look" if old else "Well")


def _part(name: str, says: str, url_name: str, is_on: bool) -> Part:
    return Part(name, says, url_name, "done" if is_on else "plain", "On" if is_on else "Off")
