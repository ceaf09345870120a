"""Addresses of what leaves the house, each state of a message once."""

from collections.abc import Iterator

from django.urls import reverse
from django.utils import timezone

from tests.factories import House
from tests.trimops.outbox.messages import put
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing

SAID = {
    "waiting": "450 4.2.1 the mailbox of this farm is busy, come back later",
    "failed": "550 5.1.1 no such person here",
    "lapsed": "It came too late to be of use, so it does not go any more.",
    "left": "",
}


def outgoing_pages(house: House, money_mail: int) -> Iterator[str]:
    """The list, a bill's mail, and one message in each state of trouble."""
    yield from (reverse("outgoing_list") + "?show=all", reverse("outgoing", args=[money_mail]))
    for state, words in SAID.items():
        row = put(
            house,
            at=timezone.now(),
            by=house.owner,
            farm_id=house.farm.pk,
            topic=Topic.VISIT,
            channel=Channel.SMS if state == "left" else Channel.MAIL,
            address="somebody.with-a-long-name@high-moor-and-low-croft-dairies.example.invalid",
            body="We come on Tuesday at ten.\n\n{secret}\n" if state == "failed" else "We come at ten.",
            not_before=timezone.now(),
        )
        rows = Outgoing.objects.within(house.scope).filter(pk=row.pk)
        rows.update(state=state, last_words=words, tries=2, may_have_gone=state == "failed")
        if state == "waiting":
            rows.update(next_try_at=timezone.now())
        yield reverse("outgoing", args=[row.pk])
