"""The catalogue of background jobs and their timetable.

A job of the first list is an errand for one business: `enqueue` keeps it in the database (`trimops/errands`), and a
function of an app's `tasks.py` marked `@does(Job.…)` does it. With REDIS_URL set a worker runs it; without, it runs in
this process after the commit, or in a process of its own when it takes long.
"""

from datetime import time
from enum import StrEnum

from celery.schedules import crontab, schedule


class Job(StrEnum):
    """Every job there is; the value is the task's name."""

    TICK = "trimops.tick"
    KEEP_BACKUP = "trimops.keep_backup"
    EXPIRE_OFFERS = "visits.expire_offers"
    BOOK_RECHECKS = "visits.book_rechecks"
    SWEEP_RECHECKS = "visits.sweep_rechecks"
    LEARN_ROADS = "visits.learn_roads"
    SWEEP_ROADS = "visits.sweep_roads"
    LEARN_LENGTHS = "visits.learn_lengths"
    PLAN_WEEK = "visits.plan_week"
    REPLAN_WEEK = "visits.replan_week"
    GIVE_REASONS = "visits.give_reasons"
    PROVE_WEEK = "visits.prove_week"
    DRAFT_INVOICE = "invoicing.draft_invoice"
    ISSUE_INVOICE = "invoicing.issue_invoice"
    PROPOSE_REMINDERS = "invoicing.propose_reminders"
    KEEP_JOURNEYS = "invoicing.keep_journeys"
    ISSUE_REPORT = "visits.issue_report"
    TELL_REPORT = "trimops.tell_report"
    SEND_OUTGOING = "trimops.send_outgoing"
    SEND_ALARM = "trimops.send_alarm"
    CLEAN_UP = "trimops.clean_up"
    SEAL_AUDIT = "trimops.seal_audit"
    PROPOSE_WEEK = "visits.propose_week"
    TELL_EVENING = "visits.tell_evening"
    TELL_FARMS = "visits.tell_farms"
    TELL_TOMORROW = "visits.tell_tomorrow"
    TELL_NEXT = "visits.tell_next"
    LOOK_AT_DELAYS = "visits.look_at_delays"
    TELL_DELAYS = "visits.tell_delays"
    LOOK_AT_WATCHES = "visits.look_at_watches"
    LOOK_AT_WATCH = "visits.look_at_watch"
    FETCH_DAYS_OFF = "visits.fetch_days_off"
    LOOK_AT_CALENDARS = "visits.look_at_calendars"
    SEND_INVITATIONS = "visits.send_invitations"

    @property
    def label(self) -> str:
        """What it does, as a page says it: "it could not be done: …"."""
        return _LABELS[self]

    @property
    def runs_apart(self) -> bool:
        """True where the embedded form gives the job a process of its own, so that no page waits for it."""
        return self in LONG_JOBS

    @property
    def runs_beside(self) -> bool:
        """True where the embedded form does it in a thread of its own: neither how long the other side takes nor that
        it fails holds up, or shows in, the page that caused it."""
        return self in (Job.SEND_OUTGOING, Job.SEND_ALARM, Job.FETCH_DAYS_OFF)


URGENT_JOBS = (Job.LOOK_AT_WATCH, Job.SEND_ALARM)
LONG_JOBS = (Job.PLAN_WEEK, Job.REPLAN_WEEK, Job.GIVE_REASONS, Job.PROVE_WEEK)

_LABELS = {
    Job.TICK: "Look for what is due",
    Job.KEEP_BACKUP: "Make a backup",
    Job.EXPIRE_OFFERS: "Let go of held hours whose time is up",
    Job.BOOK_RECHECKS: "Book the re-checks of a visit",
    Job.SWEEP_RECHECKS: "Gather re-checks and routine visits for the night",
    Job.LEARN_ROADS: "Ask the road map for drives to a farm",
    Job.SWEEP_ROADS: "Ask the road map for drives still missing",
    Job.LEARN_LENGTHS: "Learn how long visits take",
    Job.PLAN_WEEK: "Plan a week",
    Job.REPLAN_WEEK: "Plan a week again after a change",
    Job.GIVE_REASONS: "Say why a plan is as it is",
    Job.PROVE_WEEK: "Prove how good a plan is",
    Job.DRAFT_INVOICE: "Draft the invoice of a visit",
    Job.ISSUE_INVOICE: "Issue an invoice",
    Job.PROPOSE_REMINDERS: "Look for overdue invoices",
    Job.KEEP_JOURNEYS: "Keep the drives of the day",
    Job.ISSUE_REPORT: "Issue the report of a visit",
    Job.TELL_REPORT: "Tell a farm that its report is there",
    Job.SEND_OUTGOING: "Send a message",
    Job.SEND_ALARM: "Send a message of the lone-worker watch",
    Job.CLEAN_UP: "Clear away what nobody needs any more",
    Job.SEAL_AUDIT: "Seal the trail of changes",
    Job.PROPOSE_WEEK: "Propose a plan for the coming days",
    Job.TELL_EVENING: "Send tomorrow's round and tonight's list",
    Job.TELL_FARMS: "Tell a farm about its visit",
    Job.TELL_TOMORROW: "Tell farms that we come tomorrow",
    Job.TELL_NEXT: "Tell the next farm that we are on the way",
    Job.LOOK_AT_DELAYS: "Look for vans that run late",
    Job.TELL_DELAYS: "Tell farms that a van runs late",
    Job.LOOK_AT_WATCHES: "Look after those who work alone",
    Job.LOOK_AT_WATCH: "Look after somebody who works alone",
    Job.FETCH_DAYS_OFF: "Fetch days off from an outside calendar",
    Job.LOOK_AT_CALENDARS: "Look for outside calendars to read again",
    Job.SEND_INVITATIONS: "Send calendar invitations of a visit",
}

# By the wall clock of each business: not before this time of its day, once a day, later where the machine slept.
DAILY: dict[Job, time] = {
    Job.LEARN_LENGTHS: time(2, 0),
    Job.SWEEP_RECHECKS: time(2, 10),
    Job.SWEEP_ROADS: time(2, 20),
    Job.KEEP_JOURNEYS: time(2, 30),
    Job.CLEAN_UP: time(3, 30),
    Job.PROPOSE_REMINDERS: time(6, 0),
    # It waits by itself for the hour that the business has chosen.
    Job.TELL_TOMORROW: time(6, 30),
    Job.PROPOSE_WEEK: time(18, 30),
    Job.TELL_EVENING: time(19, 0),
}

# For all businesses at once, and quickly done: each only finds what is due and leaves errands.
SCHEDULE: dict[Job, crontab | schedule] = {
    Job.TICK: schedule(10),
    Job.LOOK_AT_WATCHES: crontab(minute="*"),
    Job.EXPIRE_OFFERS: crontab(minute="*/10"),
    Job.SEAL_AUDIT: crontab(minute="*/10"),
    # Each hour, made once a day: a machine that sleeps at night has its backup by day.
    Job.KEEP_BACKUP: crontab(minute=45),
    Job.LOOK_AT_DELAYS: crontab(minute="*/5"),
    Job.LOOK_AT_CALENDARS: crontab(minute="*/20"),
}

URGENT_QUEUE = "urgent"
"""Where the timetable and the watch over who works alone wait at the broker: behind nobody's five thousand mails."""
PROMPT_QUEUE = "prompt"
DAILY_QUEUE = "daily"
"""Where daily errands wait, so that what a person waits for is not behind a thousand nights."""
LONG_QUEUE = "long"
"""Where plans wait to be thought out, which of an evening all businesses want at once, and the backup."""
QUEUES = (URGENT_QUEUE, PROMPT_QUEUE, DAILY_QUEUE, LONG_QUEUE)
"""A worker takes from each in turn; one without `--queues` from all."""


def queue_of(name: str, *, is_daily: bool) -> str:
    """Where an errand of that job waits."""
    if is_daily:
        return DAILY_QUEUE
    if name in URGENT_JOBS:
        return URGENT_QUEUE
    return LONG_QUEUE if name in LONG_JOBS else PROMPT_QUEUE


def schedule_queue_of(job: Job) -> str:
    """Where a job of the timetable waits: in the way of no other, or as long as it likes."""
    return LONG_QUEUE if job is Job.KEEP_BACKUP else URGENT_QUEUE
