"""The farm has said yes to the hour."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.services.visit_change import begin_change, keep_change


@transaction.atomic
def confirm_visit(*, visit: Visit, at: datetime, by: User, note: str = "") -> Visit:
    """A confirmed visit keeps its van and hour when the week is planned anew."""
    return keep_change(
        begin_change(visit, VisitState.CONFIRMED), VisitState.CONFIRMED, at=at, by=by, note=note
    )
