"""Whom to tell, in turn."""

from collections.abc import Iterable

from django.db.models import Q

from trimops.kernel.scope import Scope
from visits.models import Van, WatchContact
from visits.selectors.lone_watch.ways_out import addresses_of, ways_out


def contacts_for(scope: Scope, van_id: int | None) -> list[WatchContact]:
    """Those for this van and those for all vans whom something from here reaches, in their turn; where nothing leaves
    at present, all who have an address: it goes once something does. Of a van for which nobody was put on the list,
    those of the others: that somebody looks matters more than who.
    """
    everybody = WatchContact.objects.within(scope)
    named = _with_address(everybody.filter(Q(van_id=van_id) | Q(van__isnull=True)))
    named = named or _with_address(everybody)
    ways = ways_out()
    return [contact for contact in named if ways & set(addresses_of(contact))] or named


def _with_address(rows: Iterable[WatchContact]) -> list[WatchContact]:
    return [contact for contact in rows if addresses_of(contact)]


def vans_without_contact(scope: Scope) -> list[str]:
    """Names of the vans that go out and for which nobody can be told by a way that leaves this machine."""
    ways = ways_out()
    rows = WatchContact.objects.within(scope)
    reached = {contact.van_id for contact in rows if ways & set(addresses_of(contact))}
    if None in reached:
        return []
    vans = Van.objects.within(scope).filter(is_active=True)
    return [van.name for van in vans if van.pk not in reached]
