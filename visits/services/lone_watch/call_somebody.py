"""One person is asked or told: a call with a link of its own, and a message by each way that is theirs."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from django.conf import settings

from trimops.kernel.secret_link import hash_of, new_secret
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.services.put_out import Message, put_out
from visits.domain.lone_watch.call_names import call_name
from visits.models import LoneWatch, Visit, WatchCall, WatchContact

LINK = "{secret}"
"""Stands in the text until the message goes, so that no link lies in the database."""


@dataclass(frozen=True)
class Person:
    """Who is called, and channel -> address of each way. `contact` None: the trimmer."""

    name: str
    ways: Mapping[Channel, str]
    contact: WatchContact | None = None


@dataclass(frozen=True)
class CallText:
    """The mail and the SMS, each with the link in it as `call_address` gives it."""

    subject: str
    mail: str
    sms: str


def call_address() -> str:
    """The link of a call with its secret still to be put in."""
    return f"{settings.SITE_ADDRESS}/watch/by/{LINK}/"


def call_somebody(*, watch: LoneWatch, person: Person, text: CallText, at: datetime) -> WatchCall:
    """Keep the call and put the messages out; the caller holds the watch's lock and saves its `calls_made`.

    Never held back for the night. Each message is written once, by the number of the call.
    """
    watch.calls_made += 1
    secret = new_secret()
    call = WatchCall(business_id=watch.business_id, watch=watch, number=watch.calls_made, at=at)
    call.contact, call.is_trimmer, call.name = person.contact, person.contact is None, person.name[:120]
    call.phone, call.email = person.ways.get(Channel.SMS, ""), person.ways.get(Channel.MAIL, "")
    call.secret_hash = hash_of(secret)
    call.full_clean(validate_unique=False)
    call.save(force_insert=True)
    farm_id = farm_of(watch)
    for channel, address in person.ways.items():
        message = Message(
            channel=channel,
            topic=Topic.WATCH,
            address=address,
            subject=text.subject if channel is Channel.MAIL else "",
            body=text.mail if channel is Channel.MAIL else text.sms,
            once=call_name(watch.pk, call.number, channel.value),
            farm_id=farm_id,
            secret=secret,
        )
        put_out(business_id=watch.business_id, message=message, at=at)
    return call


def farm_of(watch: LoneWatch) -> int | None:
    if watch.visit_id is None:
        return None
    return Visit.objects.within(watch.scope).values_list("farm_id", flat=True).get(pk=watch.visit_id)
