"""Whether anything that the watch says can leave this machine, and whether somebody keeps the time."""

from datetime import datetime, timedelta

from django.conf import settings

from trimops.outbox.domain.outgoing_states import Channel
from trimops.watch.timetable import last_beat
from visits.domain.lone_watch.watch_states import CalledBy
from visits.models import WatchContact

_CHANNELS = {
    CalledBy.MAIL: (Channel.MAIL,),
    CalledBy.SMS: (Channel.SMS,),
    CalledBy.BOTH: (Channel.SMS, Channel.MAIL),
}


def ways_out() -> frozenset[Channel]:
    """The channels by which something really leaves; files beside the data reach nobody."""
    if not settings.EMAIL_HOST:
        return frozenset()
    return frozenset({Channel.MAIL, Channel.SMS} if settings.SMS.startswith("mail:") else {Channel.MAIL})


def is_timetable_kept(now: datetime) -> bool:
    """Whether somebody looks at what is due every minute."""
    beat = last_beat()
    return beat is not None and now - beat < timedelta(minutes=settings.TIMETABLE_MINUTES)


def ways_to(contact: WatchContact) -> dict[Channel, str]:
    """The addresses of theirs at which something from here arrives; all of them where nothing leaves at present."""
    known = addresses_of(contact)
    ways = ways_out()
    return {channel: known[channel] for channel in known if channel in ways} or known


def addresses_of(contact: WatchContact) -> dict[Channel, str]:
    """How this person wants to be told and can be: channel -> address. Empty where no address is kept for it."""
    known = {Channel.MAIL: contact.email, Channel.SMS: contact.phone}
    return {channel: known[channel] for channel in _CHANNELS[CalledBy(contact.told_by)] if known[channel]}
