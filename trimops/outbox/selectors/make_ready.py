"""A message as its sender is handed it."""

from datetime import datetime

from trimops.outbox.domain.outgoing_states import SECRET_PLACE, Channel
from trimops.outbox.models import Outgoing, OutgoingPart
from trimops.outbox.senders.ready import Part, Ready


def make_ready(row: Outgoing, at: datetime) -> Ready:
    """With its secret in its place and what hangs on it. Two queries. `at`: when this try began."""
    parts = OutgoingPart.objects.within(row.scope).filter(outgoing=row)
    return Ready(
        business_id=row.business_id,
        key=row.key,
        channel=Channel(row.channel),
        address=row.address,
        body=row.body.replace(SECRET_PLACE, row.secret) if row.secret else row.body,
        at=at,
        subject=row.subject,
        reply_to=row.reply_to,
        from_name=row.business.name,
        country=row.business.country,
        is_automatic=row.written_by_id is None,
        parts=[Part(part.name, part.media_type, bytes(part.content), part.is_alternative) for part in parts],
    )
