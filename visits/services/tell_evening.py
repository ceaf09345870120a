"""Trimmers who want it are mailed tomorrow's round and tonight's list."""

from datetime import datetime, time

from django.db import transaction

from trimops.accounts.models import Business, Membership
from trimops.kernel.clock import at_local
from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.services.put_out import Message, put_out
from visits.documents.evening_mail import evening_subject, evening_text
from visits.models import Van
from visits.selectors.evening_content import evening_content
from visits.selectors.kit.tonight import Tonight, tonight

NEWS_UNTIL = time(12)
"""Of the day it is about: a mail that comes later says nothing that is not over."""


@transaction.atomic
def tell_evening(*, business: Business, at: datetime) -> list[Outgoing]:
    """One mail for each van in use whose trimmer wants it; none where there is neither a round nor anything to do.

    Done twice of an evening, it is done once.
    """
    vans = _vans(business)
    if not vans:
        return []
    tasks = tonight(business, at)
    sent = [_told(business, van, tasks, at) for van in vans]
    return [row for row in sent if row is not None]


def _vans(business: Business) -> list[Van]:
    wanting = Membership.objects.filter(business=business, evening_mail=True, joined_at__isnull=False)
    people = list(wanting.filter(ended_at__isnull=True).values_list("user_id", flat=True))
    rows = Van.objects.within(Scope(business.pk)).filter(is_active=True, trimmer_id__in=people)
    return list(rows.select_related("trimmer").order_by("name", "pk"))


def _told(business: Business, van: Van, tasks: Tonight, at: datetime) -> Outgoing | None:
    mail = evening_content(business, van, tasks, at)
    if mail.is_empty:
        return None
    message = Message(
        channel=Channel.MAIL,
        topic=Topic.EVENING,
        address=van.trimmer.email,
        subject=evening_subject(mail),
        body=evening_text(mail),
        once=f"evening:{van.pk}:{mail.day.isoformat()}",
        worthless_after=at_local(mail.day, NEWS_UNTIL, business.zone),
    )
    return put_out(business_id=business.pk, message=message, at=at)
