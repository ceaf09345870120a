"""One look at one watch: the step that is due is done, once."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.outbox.domain.outgoing_states import Channel
from trimops.tenancy.unscoped import unscoped
from visits.domain.lone_watch.watch_states import WatchEnd, WatchState
from visits.domain.lone_watch.watch_step import Step, StepKind, watch_step
from visits.domain.lone_watch.watch_words import ask_mail, ask_sms, tell_mail, tell_sms
from visits.domain.visit_states import VisitState
from visits.models import LoneWatch, Visit, WatchRules
from visits.selectors.lone_watch.lost_calls import is_last_call_lost
from visits.selectors.lone_watch.watch_contacts import contacts_for
from visits.selectors.lone_watch.watch_facts import facts_of, missed_of, phone_of
from visits.selectors.lone_watch.ways_out import ways_out, ways_to
from visits.services.lone_watch.call_somebody import CallText, Person, call_address, call_somebody
from visits.services.lone_watch.check_in import go_on_watching
from visits.services.lone_watch.end_watch import end_watch
from visits.services.lone_watch.note_watch import note_watch
from visits.services.lone_watch.tell_watch_event import tell_watch_event

MOST_STEPS = 3
"""Of one look: waking up and asking, say. Each step leads to another state, so this is never reached."""


@transaction.atomic
def look_at_watch(*, watch_id: int, at: datetime) -> LoneWatch | None:
    """Do what is due at `at` on the locked row, and note when to look again; None where the watch is gone.

    Messages are written in the same transaction as the state that says so: two workers at once, or one that is killed
    and comes again, write each of them once.
    """
    with unscoped("a watch is looked at by its number"):
        found = LoneWatch.objects.filter(pk=watch_id).first()
    if found is None:
        return None
    watch = found.locked()
    if watch.is_over or watch.visit_id is None:
        return watch
    visit = Visit.objects.within(watch.scope).get(pk=watch.visit_id)
    if over := _why_over(watch, visit, at):
        return end_watch(watch=watch, how=over[0], because=over[1], at=at)
    rules = WatchRules.objects.within(watch.scope).get()
    if is_last_call_lost(watch):
        note_watch(watch=watch, words="The last message could not be sent: the next one is told.", at=at)
        watch.told_at = None
    for _ in range(MOST_STEPS):
        facts = facts_of(watch, rules, visit)
        watch.expected_finish = facts.expected_end
        step = watch_step(facts, at)
        _do(watch, step, at)
        if step.kind is not StepKind.RESUME:
            break
    watch.save()
    return watch


def _why_over(watch: LoneWatch, visit: Visit, at: datetime) -> tuple[WatchEnd, str] | None:
    """A visit that ended, or went to another hour, without a word to its watch."""
    state = visit.visit_state
    if state is VisitState.FINISHED:
        return WatchEnd.FINISHED, "The visit was finished."
    if state in (VisitState.CALLED_OFF, VisitState.WANTED):
        return WatchEnd.CALLED_OFF, "The visit was called off or put off."
    is_planned = state in (VisitState.PLANNED, VisitState.CONFIRMED)
    if watch.is_by_plan and is_planned and (visit.planned_start is None or visit.planned_start > at):
        return WatchEnd.NOT_THERE, "The visit has another hour now."
    if watch.is_by_plan and is_planned and visit.van_id != watch.van_id:
        return WatchEnd.NOT_THERE, "Another van goes there now."
    return None


def _do(watch: LoneWatch, step: Step, at: datetime) -> None:
    watch.next_at = step.at
    if step.kind is StepKind.RESUME:
        note_watch(
            watch=watch, words="Something was noted on the phone after the question: all is well.", at=at
        )
        go_on_watching(watch, at)
    elif step.kind is StepKind.SETTLE:
        watch.was_away, watch.answer_until = True, step.at
        words = "This server was away: phones get a moment to speak before others are told."
        note_watch(watch=watch, words=words, at=at)
    elif step.kind is StepKind.ASK and step.at is not None:
        _ask(watch, step.at, at)
    elif step.kind is StepKind.TELL:
        _tell_next(watch, at)


def _ask(watch: LoneWatch, until: datetime, at: datetime) -> None:
    """The trimmer, by every way that is theirs."""
    watch.state, watch.asked_at, watch.answer_until = WatchState.ASKED.value, at, until
    rules = WatchRules.objects.within(watch.scope).get()
    watch.was_away = until - at < timedelta(minutes=rules.answer_minutes)
    known = {Channel.SMS: phone_of(watch), Channel.MAIL: watch.trimmer.email}
    ways = {channel: known[channel] for channel in known if known[channel] and channel in ways_out()}
    missed, link = missed_of(watch, at), call_address()
    text = CallText(*ask_mail(missed, until, link), ask_sms(missed, until, link))
    if ways:
        call_somebody(watch=watch, person=Person(watch.trimmer.name, ways), text=text, at=at)
    by = " and ".join(channel.label for channel in ways) or "the page only: nothing can leave this server"
    late = " We were away, so the time to answer is short." if watch.was_away else ""
    note_watch(watch=watch, words=f"{watch.trimmer.name} was asked by {by}.{late}", at=at)


def _tell_next(watch: LoneWatch, at: datetime) -> None:
    """The next on the list, and after the last the first again."""
    contacts = contacts_for(watch.scope, watch.van_id)
    watch.state, watch.told_at, watch.taken_at = WatchState.TOLD.value, at, None
    if watch.tellings == 0:
        tell_watch_event(watch=watch, at=at)
    if contacts:
        contact = contacts[watch.tellings % len(contacts)]
        missed, link = missed_of(watch, at), call_address()
        text = CallText(*tell_mail(missed, link), tell_sms(missed, link))
        ways = ways_to(contact)
        call_somebody(watch=watch, person=Person(contact.name, ways, contact), text=text, at=at)
        by = " and ".join(channel.label for channel in ways)
        note_watch(watch=watch, words=f"{contact.name} is told by {by}.", at=at)
    else:
        note_watch(watch=watch, words="Nobody is on the list: nobody could be told.", at=at)
    watch.tellings += 1
