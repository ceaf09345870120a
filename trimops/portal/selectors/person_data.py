"""All that is kept of one person, as files for them to keep: JSON a table, and a word on what is what."""

import json
from collections.abc import Iterable, Iterator
from datetime import datetime
from itertools import chain

from farms.models import Contact, FarmAccess
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.kernel.scope import Scope
from trimops.outbox.models import Outgoing
from trimops.portal.selectors.person_rows import (
    Row,
    Tables,
    rows_of_contact,
    rows_of_person,
    rows_of_sign_in,
    told,
)

Files = Iterator[tuple[str, bytes]]
ABOUT = """What {business} keeps of {name}, taken out {at}.

One file a table; a large one in several. `named_as` says by which columns a line names the person. Moments are given
with their offset (ISO 8601). Left out: passwords, secrets, and what proves that nothing was altered; pictures and whole
papers, which are the farms'; and of somebody of a farm, what they set going at other farms. What stands as free
words in a note names nobody that a program could find. Names on invoices, reports and letters stay with those
papers. Safety copies of the database hold the same until they are overwritten.
"""


def person_files(membership: Membership, at: datetime, *, is_asked_by_self: bool = False) -> Files:
    """Of somebody who signs in: account, sign-ins, messages to them, and each line of this business that names them.

    To the owner, who hands it on, no more of the sign-ins than is this business's alone.
    """
    business, user = membership.business, membership.user
    scope = Scope(business.pk)
    yield _about(business.name, user.name, at)
    tables = chain(
        rows_of_sign_in(membership, is_asked_by_self=is_asked_by_self),
        _messages(scope, user.email, membership.phone),
    )
    named = (rows_of_person(each, user) for each in _scopes_of(membership))
    yield from _as_files(chain(tables, chain.from_iterable(named)))


def _scopes_of(membership: Membership) -> list[Scope]:
    """Where lines may name the person. Whoever takes an hour moves other farms' visits by it, and those are none of
    theirs: of somebody of a farm only what lies within their farms."""
    whole = Scope(membership.business_id)
    if membership.role != Role.FARM:
        return [whole]
    rows = FarmAccess.objects.within(whole).filter(membership=membership).order_by("farm_id")
    return [Scope(membership.business_id, farm) for farm in rows.values_list("farm_id", flat=True)]


def contact_files(contact: Contact, at: datetime) -> Files:
    """Of a person at a farm."""
    yield _about(contact.business.name, contact.name, at)
    own: Tables = iter([("contact", [told(contact)])])
    messages = _messages(contact.scope, contact.email, contact.phone)
    yield from _as_files(chain(own, messages, rows_of_contact(contact.scope, contact)))


def _messages(scope: Scope, *addresses: str) -> Tables:
    """What went to one of these addresses, or waits to."""
    found: list[Row] = []
    for address in filter(None, addresses):
        found += [told(row) for row in Outgoing.objects.within(scope).filter(address__iexact=address)]
    if found:
        yield "messages to them", found


def _about(business: str, name: str, at: datetime) -> tuple[str, bytes]:
    words = ABOUT.format(business=business, name=name, at=at.isoformat(timespec="minutes"))
    return "read me.txt", words.encode()


def _as_files(tables: Iterable[tuple[str, list[Row]]]) -> Files:
    seen: dict[str, int] = {}
    for title, rows in tables:
        number = seen[title] = seen.get(title, 0) + 1
        name = title if number == 1 else f"{title} {number}"
        yield f"{name}.json", json.dumps(rows, ensure_ascii=False, indent=1, default=str).encode()
