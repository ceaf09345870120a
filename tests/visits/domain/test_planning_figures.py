import pytest

from visits.domain.own_figures import FigureRefused
from visits.domain.planning_figures import PlanningFigures
from visits.domain.visit_states import VisitReason

USUAL = PlanningFigures()


def test_the_more_it_presses_the_dearer_each_day_late():
    routine, recheck, urgent = (
        USUAL.late_cost(reason) for reason in (VisitReason.ROUTINE, VisitReason.RECHECK, VisitReason.URGENT)
    )
    assert routine < recheck < urgent


def test_an_urgent_visit_has_no_price_for_being_left_out():
    assert USUAL.leave_out_cost(VisitReason.URGENT, 3) is None
    assert USUAL.leave_out_cost(VisitReason.ROUTINE, 3) < USUAL.leave_out_cost(VisitReason.RECHECK, 3)
    assert (
        USUAL.leave_out_cost(VisitReason.ROUTINE, 30) - USUAL.leave_out_cost(VisitReason.ROUTINE, 10)
        == 20 * 1300
    )


def test_a_business_lays_its_own_figures_over_the_usual_ones():
    own = PlanningFigures.from_overrides({"kmh": 40, "late_per_day_routine": 900})
    assert (own.kmh, own.late_cost(VisitReason.ROUTINE)) == (40, 900)


@pytest.mark.parametrize(
    "own", [{"kmh": 0}, {"circuity": 0.5}, {"speed": 40}, {"latest_hour": 5}, {"latest_hour": 25}]
)
def test_travel_that_cannot_be_is_refused(own):
    with pytest.raises(FigureRefused):
        PlanningFigures.from_overrides(own)
