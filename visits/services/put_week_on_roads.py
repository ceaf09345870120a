"""Before a week is thought about, its drives are taken from the road map."""

from datetime import datetime

from visits.models import WeekPlan
from visits.selectors.business_figures import figures_of
from visits.selectors.week_travel import places_of, travel_story, week_travel
from visits.services.learn_roads import learn_roads


def put_week_on_roads(*, week_plan: WeekPlan, at: datetime) -> WeekPlan:
    """Ask for the drives that are missing, put all of them into the problem, and remember where each came from.

    A road map that cannot be asked holds this up for a few seconds at most, and the drives are estimated. A
    problem without places is left as it is. Not one transaction: no lock is held while the map is asked.
    """
    places = places_of(week_plan.problem)
    if not places:
        return week_plan
    learn_roads(business=week_plan.business, places=places, at=at)
    table = week_travel(week_plan.scope, places, figures_of(week_plan.scope).planning)
    week_plan.problem = {**week_plan.problem, "travel": table.as_travel()}
    week_plan.travel = travel_story(week_plan.scope, table, at)
    week_plan.save(update_fields=["problem", "travel"])
    return week_plan
