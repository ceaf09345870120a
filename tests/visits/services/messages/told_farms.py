"""A business that tells its farms by itself, and what went out of it."""

from datetime import timedelta

from farms.models import Contact
from tests.factories import House
from trimops.errands.models import Errand
from trimops.jobs import Job
from trimops.outbox.models import Outgoing
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules, Visit

ALL = [kind.value for kind in MessageKind if kind.is_switched]
SETTLED = timedelta(minutes=3)


def switch_on(house: House, *kinds: MessageKind, **rules: object) -> MessageRules:
    """These kinds, or all of them."""
    chosen = [kind.value for kind in kinds] or ALL
    return MessageRules.objects.create(business=house.business, switched_on=chosen, **rules)


def mailed(house: House, name: str = "Ann Mail", **fields: object) -> Contact:
    address = f"{name.split()[0].lower()}@farm.example"
    return _told(house, name, **{"told_by": "mail", "email": address, **fields})


def texted(house: House, name: str = "Sid Text", **fields: object) -> Contact:
    return _told(house, name, told_by="sms", phone="0199 555 020", **fields)


def _told(house: House, name: str, **fields: object) -> Contact:
    fields = {"business": house.business, "farm": house.farm, "part": "Owner", **fields}
    return Contact.objects.create(name=name, **fields)


def written(house: House) -> list[Outgoing]:
    """What was put out, oldest first."""
    return list(Outgoing.objects.within(house.scope).order_by("id"))


def subjects(house: House) -> list[str]:
    return [row.subject or row.body for row in written(house)]


def errands(house: House, job: Job) -> list[Errand]:
    return list(Errand.objects.within(house.scope).filter(job=job.value).order_by("id"))


def again(visit: Visit) -> Visit:
    """As it stands in the database, with what the services want at hand."""
    rows = Visit.objects.within(visit.scope).select_related("farm", "business", "van__business")
    return rows.get(pk=visit.pk)
