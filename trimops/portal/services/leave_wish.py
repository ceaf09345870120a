"""None of the hours will do: a farm leaves its wish with the business."""

from datetime import datetime

from django.db import transaction

from farms.models import Farm
from trimops.accounts.models import User
from trimops.portal.services.tell_business import tell_business
from visits.models import Visit
from visits.services.ask_visit import VisitWish, ask_visit


@transaction.atomic
def leave_wish(*, farm: Farm, wish: VisitWish, at: datetime, by: User) -> Visit:
    """A wanted visit, and the business hears of it."""
    visit = ask_visit(farm=farm, wish=wish, at=at, by=by)
    tell_business(visit=visit, at=at)
    return visit
