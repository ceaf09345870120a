"""A business with the watch on, and what has left it: plain functions."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime, timedelta

from django.conf import LazySettings
from django.db import transaction
from django.test import override_settings
from pytest_django import DjangoDbBlocker

from tests.factories import NOON, TUESDAY_TEN, House, make_house, under_way
from trimops.outbox.models import Outgoing
from trimops.watch.timetable import note_beat
from visits.domain.lone_watch.watch_states import CalledBy
from visits.models import LoneWatch, WatchCall, WatchContact, WatchEvent, WatchRules
from visits.services.lone_watch.look_at_watch import look_at_watch
from visits.services.lone_watch.save_watch_rules import WatchWish, save_watch_rules

WISH = WatchWish(is_on=True, watches_plan=True, grace_minutes=30, answer_minutes=10, repeat_minutes=15)


def can_tell(settings: LazySettings, *, sms: str = "mail:gateway.example") -> None:
    """Mail and SMS leave this machine, and somebody keeps the time."""
    settings.EMAIL_HOST, settings.SMS = "mail.example", sms
    note_beat(NOON)


@contextmanager
def house_of_a_file(blocker: DjangoDbBlocker) -> Iterator[House]:
    """Made once for a file and taken back at its end; each test stands on it in a transaction of its own."""
    leaves = override_settings(EMAIL_HOST="mail.example", SMS="mail:gateway.example")
    with blocker.unblock(), transaction.atomic(), leaves:
        yield watched_house()
        transaction.set_rollback(True)


def watched_house() -> House:
    """The watch is on; a neighbour is told by mail, then the sister by SMS. Call it where something can leave."""
    note_beat(NOON)
    house = make_house()
    member = house.memberships["trimmer"]
    member.phone = "0199 555 010"
    member.save()
    add_contact(house, "N. Neighbour", email="neighbour@home.example")
    add_contact(house, "S. Sister", phone="0199 555 020", told_by=CalledBy.SMS.value, turn=2)
    save_watch_rules(business=house.business, wish=WISH, at=NOON, by=house.owner)
    return house


def add_contact(house: House, name: str, **fields: object) -> WatchContact:
    return WatchContact.objects.create(business=house.business, name=name, **fields)


def watch_of(house: House, start: datetime = TUESDAY_TEN) -> LoneWatch:
    """The watch over a visit that has just begun; it is expected to take until `end_of(watch)`."""
    under_way(house.farm, house.van, start)
    return LoneWatch.objects.within(house.scope).latest("pk")


def after(watch: LoneWatch, minutes: float) -> datetime:
    """So many minutes after the visit should be over."""
    return watch.expected_finish + timedelta(minutes=minutes)


def look(watch: LoneWatch, minutes: float) -> LoneWatch:
    """A look at that moment; the row as it is then."""
    seen = look_at_watch(watch_id=watch.pk, at=after(watch, minutes))
    assert seen is not None
    return again(watch)


def again(watch: LoneWatch) -> LoneWatch:
    return LoneWatch.objects.within(watch.scope).get(pk=watch.pk)


def alarmed(house: House) -> LoneWatch:
    """Nobody answered: asked 30 minutes after the end, the neighbour told at 40; the sister comes at 55."""
    watch = watch_of(house)
    for minutes in (30, 40):
        look(watch, minutes)
    return again(watch)


def sent(house: House) -> list[Outgoing]:
    """Every message so far, in the order in which they were written."""
    return list(Outgoing.objects.within(house.scope).order_by("id"))


def went(house: House) -> None:
    """All that waited has gone."""
    for outgoing in sent(house):
        outgoing.state = "went"
        outgoing.save()


def addresses(house: House) -> list[str]:
    return [outgoing.address for outgoing in sent(house)]


def calls(watch: LoneWatch) -> list[WatchCall]:
    return list(WatchCall.objects.within(watch.scope).filter(watch=watch).select_related("watch"))


def log(watch: LoneWatch) -> str:
    return "\n".join(event.words for event in WatchEvent.objects.within(watch.scope).filter(watch=watch))


def rules(house: House) -> WatchRules:
    return WatchRules.objects.within(house.scope).get()
