"""The business hears of what a farm did by itself."""

from django.conf import settings
from django.core.mail import EmailMessage
from django.db import transaction
from django.urls import reverse

from visits.domain.mobility import MobilityScale
from visits.models import Visit


def tell_business(*, visit: Visit) -> None:
    """Mail the business's own address, if it has one, once the visit is kept: an hour taken, or a wish without one.

    A mail that cannot be sent is logged; the visit stands on the list of visits all the same.
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
    mail = EmailMessage(subject, text, None, [business.email])
    transaction.on_commit(mail.send, robust=True)


def _words(visit: Visit) -> tuple[str, str]:
    if visit.planned_start is None:
        by = f"{visit.due_until:%A %-d %B}"
        return f"{visit.farm} asks for a visit", f"{visit.farm} asks for a visit by {by}. It has no hour yet."
    at = f"{visit.planned_start.astimezone(visit.business.zone):%A %-d %B, %H:%M}"
    return f"{visit.farm} has taken an hour", f"{visit.farm} has taken {at}: the visit is confirmed."
