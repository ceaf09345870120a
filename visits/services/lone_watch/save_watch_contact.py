"""Somebody is put on the list of those who are told, mended, or taken off."""

from django.db import transaction

from trimops.kernel.errors import FieldRefused, RuleBroken
from visits.models import WatchContact
from visits.selectors.lone_watch.open_watches import rules_in_use
from visits.selectors.lone_watch.watch_contacts import vans_without_contact
from visits.selectors.lone_watch.ways_out import addresses_of


class LastOnTheList(RuleBroken):
    """The watch is on and needs somebody to tell."""

    code = "last_on_the_list"


@transaction.atomic
def save_watch_contact(*, contact: WatchContact) -> WatchContact:
    """Keep it. FieldRefused without an address of the kind they are told by; LastOnTheList as below."""
    if not addresses_of(contact):
        raise FieldRefused("told_by", "Give the phone number or mail address by which they are told.")
    contact.full_clean()
    contact.save()
    _refuse_empty(contact)
    return contact


@transaction.atomic
def drop_watch_contact(*, contact: WatchContact) -> None:
    """Take them off the list. LastOnTheList while the watch is on and a van would have nobody."""
    contact.delete()
    _refuse_empty(contact)


def _refuse_empty(contact: WatchContact) -> None:
    scope = contact.scope
    if rules_in_use(scope) and (lonely := vans_without_contact(scope)):
        raise LastOnTheList(
            f"Then there would be nobody to tell for {', '.join(lonely)}. "
            "Put somebody else on the list first, or switch the watch off."
        )
