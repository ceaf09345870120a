"""Messages for tests: put out, in a state, tried."""

from tests.factories import NOON
from trimops.errands.kinds import TryLater
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing, OutgoingEvent
from trimops.outbox.services.put_out import Message, put_out
from trimops.outbox.services.send_outgoing import send_outgoing


def message(**changes):
    asked = {
        "channel": Channel.MAIL,
        "topic": Topic.VISIT,
        "address": "office@example.invalid",
        "subject": "We come on Tuesday",
        "body": "At ten.",
        **changes,
    }
    return Message(**asked)


def put(house, *, at=NOON, by=None, **changes):
    return put_out(business_id=house.business.pk, message=message(**changes), at=at, by=by)


def in_state(house, state, **columns):
    row = put(house)
    Outgoing.objects.within(house.scope).filter(pk=row.pk).update(state=state, **columns)
    return now(row)


def now(row):
    return Outgoing.objects.within(row.scope).get(pk=row.pk)


def go(row, at, end=None):
    """Its state afterwards, None where there was nothing to do, or when it wants to be looked at again."""
    times = iter([at, end or at])
    try:
        return send_outgoing(outgoing_id=row.pk, clock=lambda: next(times))
    except TryLater as later:
        return later.at


def log(row):
    events = OutgoingEvent.objects.within(row.scope).filter(outgoing=row)
    return [(event.state, event.words) for event in events]
