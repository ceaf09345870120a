"""A visit changes: whoever is invited to it is to hear of it, once the visit has settled."""

from datetime import datetime

from django.db.models import Exists, OuterRef, Q

from farms.models import Contact
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from visits.domain.messages.hour_news import SETTLES
from visits.domain.visit_states import VisitState
from visits.models import Invitation, Visit

HEARD_OF = (VisitState.WANTED, VisitState.PLANNED, VisitState.CONFIRMED, VisitState.CALLED_OFF)


def want_invitations(*, visit: Visit, at: datetime) -> bool:
    """Have them sent after the commit; whether there is anybody to send to. One query. Call inside a transaction."""
    if visit.visit_state not in HEARD_OF:
        return False
    invited = Invitation.objects.within(visit.scope).filter(visit=visit, cancelled_at__isnull=True)
    people = Contact.objects.within(visit.scope).filter(farm_id=OuterRef("farm_id"), gets_invitations=True)
    found = Q(Exists(invited))
    if visit.visit_state is VisitState.CONFIRMED:
        found |= Q(Exists(people))
    if not Visit.objects.within(visit.scope).filter(found, pk=visit.pk).exists():
        return False
    enqueue(Job.SEND_INVITATIONS, visit.business_id, not_before=at + SETTLES, visit_id=visit.pk)
    return True
