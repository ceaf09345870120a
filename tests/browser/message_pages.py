"""The pages of what farms are told by themselves."""

from collections.abc import Iterator
from datetime import timedelta

from django.conf import settings
from django.urls import reverse
from django.utils import timezone

from farms.models import Contact
from farms.selectors.stop_link import stop_link
from tests.browser.small_round import Round
from tests.trimops.outbox.messages import put
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules, MessageText, VisitMessage


def told_person(r: Round) -> Contact:
    """Somebody of the round's first farm, told by SMS in Welsh."""
    rows = Contact.objects.within(r.house.scope).filter(name="Gwen Told")
    fields = {"business": r.house.business, "farm": r.planned.farm, "part": "Herd manager"}
    told = {"told_by": "sms", "language": "cy", "phone": "0199 555 020"}
    return rows.first() or Contact.objects.create(name="Gwen Told", **fields, **told)


def strangers_message_pages(r: Round) -> Iterator[str]:
    """Behind the link of a message: before and after it was stopped, and a link that is none."""
    gwen = told_person(r)
    stop = stop_link(gwen).removeprefix(settings.SITE_ADDRESS)
    yield stop
    gwen.opted_out_at = timezone.now()
    gwen.save()
    yield stop
    gwen.opted_out_at = None
    gwen.save()


def message_pages(r: Round) -> Iterator[str]:
    """The desk, each kind with its text, a person, and a visit whose farm was told in every state of a message."""
    gwen = told_person(r)
    yield reverse("messages")
    own = {"business": r.house.business, "kind": "tomorrow", "language": "de"}
    MessageText.objects.create(**own, subject="Morgen: Klauenpflege", short="Morgen {day} ✂ {list}")
    MessageRules.objects.create(business=r.house.business, switched_on=["booked", "tomorrow"])
    yield reverse("messages")
    yield from (reverse("message", args=[kind.value]) for kind in MessageKind)
    yield reverse("message", args=["tomorrow"]) + "?language=de"
    yield reverse("contact", args=[gwen.farm_id, gwen.pk])
    yield _told_visit(r, gwen)


def _told_visit(r: Round, gwen: Contact) -> str:
    for n, state in enumerate(("went", "waiting", "failed")):
        row = put(
            r.house,
            at=timezone.now(),
            farm_id=gwen.farm_id,
            topic=Topic.VISIT,
            channel=Channel.SMS,
            address=gwen.phone,
            body="We come at ten.",
            not_before=timezone.now() + timedelta(hours=8),
        )
        Outgoing.objects.within(r.house.scope).filter(pk=row.pk).update(state=state, last_words="said no")
        kind = list(MessageKind)[n].value
        VisitMessage.objects.create(
            business=r.house.business,
            visit=r.planned,
            contact=gwen,
            kind=kind,
            hour=r.planned.planned_start,
            outgoing_id=row.pk,
            made_at=timezone.now(),
        )
    return reverse("visit", args=[r.planned.pk])
