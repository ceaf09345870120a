"""A visit is to count with so many cows: its draft list is cut there."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.models import Visit
from visits.services.draft_change import begin_draft_change, keep_count

MOST = 500


class CountMakesNoSense(RuleBroken):
    """No visit has so many cows."""

    code = "count_makes_no_sense"


@transaction.atomic
def expect_cows(*, visit: Visit, count: int, at: datetime, by: User) -> Visit:
    """Lame and re-checked ones are counted by the list, and the visit lasts as long as these cows take.

    CountMakesNoSense, DraftIsClosed, DayIsFull.
    """
    if not 1 <= count <= MOST:
        raise CountMakesNoSense(f"A visit is for 1 to {MOST} cows.")
    return keep_count(begin_draft_change(visit), count, at=at, by=by, note="counted by the draft list")
