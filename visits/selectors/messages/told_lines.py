"""What the farms of visits were told by themselves, as a page shows it."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import datetime

from farms.domain.told_by import ToldBy
from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.selectors.outgoing_rows import OutgoingLook, outgoing_look
from visits.domain.messages.message_kinds import MessageKind
from visits.models import Visit, VisitMessage
from visits.selectors.messages.told_so_far import messages_of


@dataclass(frozen=True)
class ToldLine:
    """One message to one person. `look` is None where the message itself is not kept any more."""

    message: VisitMessage
    look: OutgoingLook | None

    @property
    def kind(self) -> MessageKind:
        return MessageKind(self.message.kind)

    @property
    def way(self) -> str:
        """ "by e-mail to Ann" """
        outgoing, contact = self.message.outgoing, self.message.contact
        to = contact.name if contact else "somebody no longer listed"
        by = ToldBy.SMS if outgoing and outgoing.channel == Channel.SMS else ToldBy.MAIL
        return f"{by.label} to {to}" if outgoing else f"to {to}"

    def is_about(self, hour: datetime | None) -> bool:
        """Whether it tells this hour, or for None that the visit has none any more."""
        if hour is None:
            return self.kind.takes_back
        return self.kind.tells_hour and self.message.hour == hour


def told_lines(scope: Scope, visits: Collection[Visit]) -> dict[int, Sequence[ToldLine]]:
    """Visit key -> its messages, oldest first, without what only notes that an hour was known. One query."""
    found: dict[int, list[ToldLine]] = {}
    for row in messages_of(scope, visits):
        if row.outgoing is not None or row.contact is not None:
            line = ToldLine(row, outgoing_look(row.outgoing) if row.outgoing else None)
            found.setdefault(row.visit_id, []).append(line)
    return dict(found)
