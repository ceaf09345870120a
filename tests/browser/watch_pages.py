"""The pages of the watch over lone work: in use, with somebody who did not check in."""

from collections.abc import Iterator
from datetime import timedelta

from django.test import override_settings
from django.urls import reverse

from tests.browser.small_round import Round
from tests.factories import NOON
from trimops.kernel.secret_link import hash_of
from trimops.watch.timetable import note_beat
from visits.models import LoneWatch, WatchCall, WatchContact
from visits.services.lone_watch.begin_watch import begin_watch
from visits.services.lone_watch.look_at_watch import look_at_watch
from visits.services.lone_watch.save_watch_rules import WatchWish, save_watch_rules
from visits.services.lone_watch.try_watch import try_watch

LEAVES = override_settings(EMAIL_HOST="127.0.0.1", EMAIL_PORT=1, SMS="")
"""Something could leave: a server that refuses at once, so all of it waits."""
WISH = WatchWish(is_on=True, watches_plan=True, grace_minutes=30, answer_minutes=10, repeat_minutes=15)


def watch_pages(r: Round) -> Iterator[str]:
    """What the owner sees: nobody on the list and nothing that leaves; then a watch on which others were told."""
    yield from (reverse("watch"), reverse("watch_contact_new"))
    watch = _alarmed(r)
    contact = WatchContact.objects.within(r.house.scope).get()
    yield from (reverse("watch"), reverse("lone_watch", args=[watch.pk]))
    yield reverse("watch_contact", args=[contact.pk])
    LoneWatch.objects.within(r.house.scope).update(trimmer=r.house.owner)
    yield reverse("vans")
    LoneWatch.objects.within(r.house.scope).delete()


def watch_by_link_pages(r: Round) -> Iterator[str]:
    """Without signing in: who is asked, who is told, who gets a test."""
    watch = _alarmed(r)
    with LEAVES:
        test = try_watch(business=r.house.business, at=NOON, by=r.house.owner)
    for number, call in enumerate(WatchCall.objects.within(r.house.scope).filter(watch__in=[watch, test])):
        call.secret_hash = hash_of(f"secret-{number}")
        call.save()
        LoneWatch.objects.within(r.house.scope).filter(pk=test.pk).update(ended_at=watch.next_at)
        yield reverse("watch_by_link", args=[f"secret-{number}"])
    LoneWatch.objects.within(r.house.scope).delete()
    WatchContact.objects.within(r.house.scope).delete()


def _alarmed(r: Round) -> LoneWatch:
    house, visit = r.house, r.under_way
    WatchContact.objects.create(
        business=house.business, name="N. Neighbour", email="neighbour@home.example", phone="0199 555 020"
    )
    with LEAVES:
        note_beat(NOON)
        save_watch_rules(business=house.business, wish=WISH, at=NOON, by=house.owner)
        watch = begin_watch(visit=visit, trimmer=house.trimmer, at=visit.started_at)
        for minutes in (30, 40):
            look_at_watch(watch_id=watch.pk, at=watch.expected_finish + timedelta(minutes=minutes))
    return LoneWatch.objects.within(house.scope).get(pk=watch.pk)
