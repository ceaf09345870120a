"""A message is written in the transaction that causes it, and goes once that commits."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.errands.services.enqueue import enqueue
from trimops.outbox.domain.outgoing_states import Channel, OutgoingState, Topic
from trimops.outbox.models import Outgoing, OutgoingPart
from trimops.outbox.senders.ready import Part
from trimops.outbox.services.note_outgoing import note_outgoing
from trimops.outbox.services.start_sending import sending_job

MOST_SUBJECT = 200


@dataclass(frozen=True)
class Message:
    """One message to one address.

    `once`: a name of the news within the business; a second message of that name is not written. `secret` is put in
    the place of `{secret}` in the body when it goes and is kept no longer. `not_before`, `worthless_after`: aware.
    """

    channel: Channel
    topic: Topic
    address: str
    body: str
    subject: str = ""
    once: str = ""
    farm_id: int | None = None
    secret: str = ""
    reply_to: str = ""
    not_before: datetime | None = None
    worthless_after: datetime | None = None
    parts: Sequence[Part] = field(default=())


@transaction.atomic
def put_out(*, business_id: int, message: Message, at: datetime, by: User | None = None) -> Outgoing | None:
    """Write it and have it sent after the commit; None where this news was written before. Twice at once: one of them.

    ValidationError: an address or text that cannot be.
    """
    row = Outgoing(business_id=business_id, channel=message.channel.value, topic=message.topic.value)
    row.once, row.farm_id, row.address = message.once, message.farm_id, message.address.strip()
    row.subject = " ".join(message.subject.split())[:MOST_SUBJECT]
    row.body, row.secret, row.reply_to = message.body, message.secret, message.reply_to
    row.not_before, row.worthless_after = message.not_before, message.worthless_after
    row.written_at, row.written_by = at, by
    row.clean_fields()
    if not _insert(row):
        return None
    for part in message.parts:
        _keep_part(row, part)
    words = f"Asked for by {by}" if by else ""
    note_outgoing(outgoing=row, state=OutgoingState.WAITING, at=at, words=words)
    enqueue(sending_job(row), business_id, not_before=message.not_before, outgoing_id=row.pk)
    return row


def _insert(row: Outgoing) -> bool:
    """By the constraint, not by looking first: two at once must not both be written."""
    Outgoing.objects.bulk_create([row], ignore_conflicts=bool(row.once))
    kept = Outgoing.objects.within(row.scope).filter(key=row.key).first()
    if kept is None:
        return False
    row.pk = kept.pk
    row._state.adding = False
    return True


def _keep_part(row: Outgoing, part: Part) -> None:
    kept = OutgoingPart(business_id=row.business_id, outgoing=row, name=part.name)
    kept.media_type, kept.content, kept.is_alternative = part.media_type, part.content, part.is_alternative
    kept.full_clean()
    kept.save()
