"""Whoever a farm wants invited gets the visit into his own calendar, hears when it moves, and when it is off."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from farms.models import Contact
from trimops.errands.kinds import TryLater
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.senders.ready import Part
from trimops.outbox.services.put_out import Message, put_out
from visits.documents.invitation_words import InvitationFacts, invitation_subject, invitation_text
from visits.documents.visit_invitation import CalendarUser, InvitedVisit, visit_invitation
from visits.domain.invitation_news import InvitationMethod, InvitedHour, VisitNow, invitation_news
from visits.domain.messages.hour_news import SETTLES
from visits.domain.visit_states import VisitState
from visits.models import Invitation, Visit
from visits.selectors.invited_visit import calendar_sequence, invited_visit


@dataclass(frozen=True)
class _Guest:
    """Somebody invited before, or to be invited now."""

    user: CalendarUser
    told: Invitation | None


@transaction.atomic
def send_invitations(*, visit: Visit, at: datetime) -> int:
    """Invite who is not invited yet, tell a changed hour to who is, take back what is off; how many mails.

    What each was told is kept, so doing it twice sends nothing twice. An invitation needs an organizer: a business
    without a mail address sends none. Whoever wants no messages gets none. TryLater while the visit is being changed.
    """
    visit.locked()
    rows = Visit.objects.within(visit.scope).select_related("farm", "business", "van__trimmer")
    row = rows.get(pk=visit.pk)
    if at < row.changed_at + SETTLES:
        raise TryLater(row.changed_at + SETTLES, "It was changed just now.")
    if not row.business.email:
        return 0
    return sum(_tell(row, guest, at) for guest in _guests(row))


def _guests(visit: Visit) -> Iterator[_Guest]:
    """Each address once, whatever its case."""
    told = {row.address.lower(): row for row in Invitation.objects.within(visit.scope).filter(visit=visit)}
    people = list(Contact.objects.within(visit.scope).filter(farm=visit.farm).exclude(email=""))
    silent = {person.email.lower() for person in people if person.opted_out_at}
    users = {key: CalendarUser(row.address, row.name) for key, row in told.items()}
    wanting = [person for person in people if person.gets_invitations]
    users |= {person.email.lower(): CalendarUser(person.email, person.name) for person in wanting}
    for key in sorted(users.keys() - silent):
        yield _Guest(users[key], told.get(key))


def _tell(visit: Visit, guest: _Guest, at: datetime) -> bool:
    stands = VisitNow(visit.visit_state, visit.planned_start, visit.planned_finish, at)
    method = invitation_news(_told(guest.told), stands)
    if method is None:
        return False
    before = guest.told.start if guest.told else None
    kept = _keep(visit, guest, method, at)
    message = _message(visit, guest.user, kept, method, before)
    return put_out(business_id=visit.business_id, message=message, at=at) is not None


def _told(row: Invitation | None) -> InvitedHour | None:
    if row is None:
        return None
    return InvitedHour(row.start, row.finish, row.is_confirmed, row.cancelled_at is not None)


def _keep(visit: Visit, guest: _Guest, method: InvitationMethod, at: datetime) -> Invitation:
    """What the guest knows from now on."""
    row = guest.told or Invitation(business_id=visit.business_id, visit=visit, address=guest.user.address)
    row.name, row.sequence, row.sent_at = guest.user.name, calendar_sequence(visit), at
    row.cancelled_at = at if method is InvitationMethod.CANCEL else None
    if method is InvitationMethod.REQUEST and visit.planned_start and visit.planned_finish:
        row.start, row.finish = visit.planned_start, visit.planned_finish
        row.is_confirmed = visit.visit_state is VisitState.CONFIRMED
    row.full_clean()
    row.save()
    return row


def _message(
    visit: Visit, user: CalendarUser, kept: Invitation, method: InvitationMethod, before: datetime | None
) -> Message:
    business, is_off = visit.business, method is InvitationMethod.CANCEL
    facts = InvitationFacts(
        business=business.name,
        phone=business.phone,
        farm=visit.farm.name,
        trimmer=visit.van.trimmer.name if visit.van else "",
        start=kept.start,
        end=kept.finish,
        zone=business.timezone,
        is_confirmed=kept.is_confirmed,
        before=before,
        is_off=is_off,
    )
    invited = InvitedVisit(
        invited_visit(visit, kept.start, kept.finish),
        CalendarUser(business.email, business.name),
        user,
        business.timezone,
    )
    return Message(
        channel=Channel.MAIL,
        topic=Topic.CALENDAR,
        address=user.address,
        subject=invitation_subject(facts),
        body=invitation_text(facts),
        once=f"invitation {kept.pk} {kept.sequence} {method}",
        farm_id=visit.farm_id,
        reply_to=business.email,
        worthless_after=kept.finish,
        parts=[_part(visit_invitation(invited, method.value), method)],
    )


def _part(content: bytes, method: InvitationMethod) -> Part:
    return Part("", f"text/calendar; method={method}; charset=utf-8", content, is_alternative=True)
