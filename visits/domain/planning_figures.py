"""What planning weighs, in minor units of the business's money, and how long drives take."""

from collections.abc import Mapping
from dataclasses import dataclass

from visits.domain.own_figures import FigureRefused, with_own_figures
from visits.domain.planning.replan.price_of_change import PriceOfChange
from visits.domain.travel.travel_figures import TravelFigures
from visits.domain.visit_states import VisitReason


@dataclass(frozen=True)
class PlanningFigures(TravelFigures):
    """Costs of being late and of leaving out, by why the visit is wanted; drives as `TravelFigures` has them.

    A routine or re-check visit may be left for next week at a price; an urgent one has none and is planned if any
    plan can hold it.
    """

    late_per_day_routine: float = 500
    late_per_day_recheck: float = 1500
    late_per_day_urgent: float = 6000
    leave_out_routine: float = 12000
    leave_out_recheck: float = 30000
    leave_out_per_cow: float = 1300
    change_visit: float = 1000
    change_told_hour: float = 600
    change_told_minutes: float = 30
    hold_minutes: float = 30
    earliest_hour: float = 6
    latest_hour: float = 19

    @classmethod
    def from_overrides(cls, own: Mapping[str, object]) -> "PlanningFigures":
        """The defaults with a business's own figures; `FigureRefused` names what to mend."""
        figures = with_own_figures(cls(), own)
        figures.refuse_impossible_drives()
        if not 1 <= figures.hold_minutes <= 1440:
            raise FigureRefused("hold_minutes: must be from 1 to 1440, a day at most")
        if not figures.earliest_hour < figures.latest_hour <= 24:
            raise FigureRefused("latest_hour: must be after earliest_hour, 24 at most")
        return figures

    @property
    def price_of_change(self) -> PriceOfChange:
        """What a change costs when a week is planned again."""
        return PriceOfChange(self.change_visit, self.change_told_hour, self.change_told_minutes)

    def late_cost(self, reason: VisitReason) -> float:
        """Minor units for each day after the last due day."""
        return {
            VisitReason.ROUTINE: self.late_per_day_routine,
            VisitReason.RECHECK: self.late_per_day_recheck,
            VisitReason.URGENT: self.late_per_day_urgent,
        }[reason]

    def leave_out_cost(self, reason: VisitReason, cows: int) -> float | None:
        """Minor units for leaving the visit out of the week; None when it must be planned.

        Each cow adds what she would have brought, so that a large routine visit is not left out only because it
        takes long.
        """
        if reason is VisitReason.URGENT:
            return None
        base = self.leave_out_routine if reason is VisitReason.ROUTINE else self.leave_out_recheck
        return base + cows * self.leave_out_per_cow
