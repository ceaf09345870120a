"""A person is told of what was changed about how they get in."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Membership, User
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.services.put_out import Message, put_out


@transaction.atomic
def tell_person(*, user: User, subject: str, body: str, at: datetime) -> Outgoing | None:
    """By mail, from the business that they have been in longest. None, and nothing written, where they are in none."""
    places = Membership.objects.filter(user=user, joined_at__isnull=False, ended_at__isnull=True)
    place = places.order_by("joined_at", "id").first()
    if place is None:
        return None
    message = Message(
        channel=Channel.MAIL, topic=Topic.SIGN_IN, address=user.email, subject=subject, body=body
    )
    return put_out(business_id=place.business_id, message=message, at=at)
