"""A visit that a farm asks for and that is not kept yet."""

from dataclasses import dataclass
from datetime import date

from farms.models import Farm
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Visit

ASKED = "visit-None"
"""The job of a visit that is not kept yet."""


@dataclass(frozen=True)
class Asked:
    """What a farm asks for, as far as finding room for it goes.

    With `keeps_told` every visit whose farm was told an hour stays where it is, confirmed or not.
    """

    farm: Farm
    reason: VisitReason
    head_count: int
    minutes: int
    due_from: date
    due_until: date
    keeps_told: bool = False

    def as_visit(self) -> Visit:
        """A visit that is not kept."""
        return Visit(
            business_id=self.farm.business_id,
            farm=self.farm,
            reason=self.reason.value,
            state=VisitState.WANTED.value,
            due_from=self.due_from,
            due_until=self.due_until,
            head_count=self.head_count,
            expected_minutes=self.minutes,
        )
