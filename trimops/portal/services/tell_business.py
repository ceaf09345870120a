"""The business hears of what a farm did by itself."""

from datetime import datetime

from django.conf import settings
from django.db import transaction
from django.urls import reverse

from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.services.put_out import Message, put_out
from visits.domain.mobility import MobilityScale
from visits.models import Visit


@transaction.atomic
def tell_business(*, visit: Visit, at: datetime) -> None:
    """Mail the business's own address, if it has one, once the visit is kept: an hour taken, or a wish without one.

    Each is told once. Whether or not the mail goes, the visit stands on the list of visits.
    """
    business = visit.business
    if not business.email:
        return
    subject, first = _words(visit)
    score = ""
    if visit.mobility_scale and visit.mobility_score is not None:
        score = f", worst score {visit.mobility_score} ({MobilityScale(visit.mobility_scale).label})"
    what = (
        f"{visit.get_reason_display()}, {visit.head_count} cow{'' if visit.head_count == 1 else 's'}{score}"
    )
    page = f"{settings.SITE_ADDRESS}{reverse('visit', args=[visit.pk])}"
    text = "\n".join(
        [
            f"{first}",
            f"{what}, asked by {visit.asked_by}.",
            *([visit.note] if visit.note else []),
            "",
            page,
            "",
        ]
    )
    message = Message(
        channel=Channel.MAIL,
        topic=Topic.ASKED,
        address=business.email,
        subject=subject,
        body=text,
        once=f"{'wish' if visit.planned_start is None else 'hour'}:{visit.pk}",
        farm_id=visit.farm_id,
    )
    put_out(business_id=business.pk, message=message, at=at)


def _words(visit: Visit) -> tuple[str, str]:
    if visit.planned_start is None:
        by = f"{visit.due_until:%A %-d %B}"
        return f"{visit.farm} asks for a visit", f"{visit.farm} asks for a visit by {by}. It has no hour yet."
    at = f"{visit.planned_start.astimezone(visit.business.zone):%A %-d %B, %H:%M}"
    return f"{visit.farm} has taken an hour", f"{visit.farm} has taken {at}: the visit is confirmed."
