"""What was learned of the use of each consumable of a business."""

from zoneinfo import ZoneInfo

from trimops.kernel.scope import Scope
from visits.domain.kit.forecast.first_guess import first_guess
from visits.domain.kit.forecast.learn_use import learn_use
from visits.domain.kit.forecast.past_work import past_work
from visits.domain.kit.forecast.use_model import UseModel
from visits.selectors.kit.recipes import recipes_of
from visits.selectors.kit.use_past import use_past


def use_models(scope: Scope, items: list[int], zone: ZoneInfo) -> dict[int, UseModel]:
    """By consumable, from the visits of the past and, while these are few, its recipe. Eight queries."""
    recipes, past = recipes_of(scope), use_past(scope, items, zone)
    work = past_work(past.visits)
    return {item: learn_use(past.by_item[item], first_guess(recipes.get(item, ())), work) for item in items}
