"""A test: everybody on the list is told for real, and everything says that it is a test."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.kernel.scope import Scope
from visits.domain.lone_watch.watch_states import WatchEnd, WatchState
from visits.domain.lone_watch.watch_words import try_mail, try_sms
from visits.models import LoneWatch, WatchContact
from visits.selectors.lone_watch.ways_out import addresses_of, ways_out, ways_to
from visits.services.lone_watch.call_somebody import CallText, Person, call_address, call_somebody
from visits.services.lone_watch.note_watch import note_watch
from visits.services.lone_watch.save_watch_rules import CannotTellAnybody


@transaction.atomic
def try_watch(*, business: Business, at: datetime, by: User) -> LoneWatch:
    """Tell each contact that this is a test, with a link by which they say that it came. CannotTellAnybody where
    nothing can leave this machine or nobody is on the list.
    """
    scope = Scope(business.pk)
    contacts = [contact for contact in WatchContact.objects.within(scope) if addresses_of(contact)]
    if not ways_out():
        raise CannotTellAnybody(
            "Nothing can leave this server: no mail server is set, so there is nothing to test."
        )
    if not contacts:
        raise CannotTellAnybody("Nobody is on the list: put somebody on it first.")
    watch = LoneWatch(business=business, trimmer=by, is_test=True, began_at=at, expected_finish=at)
    watch.state, watch.ended_at, watch.ended_how = WatchState.ENDED.value, at, WatchEnd.TRIED.value
    watch.save(force_insert=True)
    link = call_address()
    text = CallText(*try_mail(by.name, business.name, link), try_sms(by.name, link))
    for contact in contacts:
        call_somebody(watch=watch, person=Person(contact.name, ways_to(contact), contact), text=text, at=at)
        note_watch(watch=watch, words=f"Test: {contact.name} is told.", at=at)
    watch.save()
    return watch
