"""What planning weighs, in minor units of the business's money, and how travel is estimated without a road map."""

from collections.abc import Mapping
from dataclasses import dataclass

from visits.domain.own_figures import FigureRefused, with_own_figures
from visits.domain.visit_states import VisitReason


@dataclass(frozen=True)
class PlanningFigures:
    """Costs of being late and of leaving out, by why the visit is wanted; travel by the published circuity.

    Circuity 1.2 to 1.4: Ballou, Rahardja and Sakai 2002; Boscoe, Henry and Zdeb 2012 (from memory). Speed of
    a van with a trailer on country roads 40 to 55 km/h: common practice, no source. A routine or re-check
    visit may be left for next week at a price; an urgent one has none and is planned if any plan can hold it.
    """

    late_per_day_routine: float = 500
    late_per_day_recheck: float = 1500
    late_per_day_urgent: float = 6000
    leave_out_routine: float = 12000
    leave_out_recheck: float = 30000
    leave_out_per_cow: float = 1300
    circuity: float = 1.35
    kmh: float = 48
    minutes_per_leg: float = 2
    earliest_hour: float = 6
    latest_hour: float = 19

    @classmethod
    def from_overrides(cls, own: Mapping[str, object]) -> "PlanningFigures":
        """The defaults with a business's own figures; `FigureRefused` names what to mend."""
        figures = with_own_figures(cls(), own)
        if figures.circuity < 1:
            raise FigureRefused("circuity: must be 1 or more: no road is shorter than the straight line")
        if figures.kmh <= 0:
            raise FigureRefused("kmh: must be above 0")
        if not figures.earliest_hour < figures.latest_hour <= 24:
            raise FigureRefused("latest_hour: must be after earliest_hour, 24 at most")
        return figures

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
