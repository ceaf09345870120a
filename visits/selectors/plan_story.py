"""What is told of a plan beside its stops: how it came about, what it costs, how the cost fell while it was found."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from trimops.accounts.models import Business
from trimops.paper.to_svg import to_svg
from visits.documents.cost_chart import CostChart, cost_chart
from visits.models import PlanMaker, WeekPlan


@dataclass(frozen=True)
class PlanStory:
    """Money in the business's currency. `bound`: no plan that does as many of the visits that must be done reckons
    to less; None where it was not proven. `chart` is a drawing (SVG), "" where there is nothing to draw."""

    total: Decimal
    late: Decimal
    out: Decimal
    bound: Decimal | None
    seconds: float
    by_hand: bool
    chart: str

    @property
    def is_proven_best(self) -> bool:
        return self.bound is not None and self.total - self.bound < 1


def plan_story(week_plan: WeekPlan, business: Business) -> PlanStory:
    """Of a plan that has been found."""
    plan: Mapping[str, object] = week_plan.plan or {}
    cost: Mapping[str, object] = plan.get("cost") or {}  # type: ignore[assignment]
    bound = plan.get("bound")
    return PlanStory(
        total=_money(cost.get("total")),
        late=_money(cost.get("lateness")),
        out=_money(cost.get("left_out")),
        bound=None if bound is None else _money(bound),
        seconds=float(str(plan.get("seconds") or 0)),
        by_hand=week_plan.made_by == PlanMaker.HAND,
        chart=cost_drawing(week_plan, business),
    )


def cost_drawing(week_plan: WeekPlan, business: Business) -> str:
    """How the cost fell (SVG); "" before two points are known."""
    points = tuple((float(seconds), float(cost) / 100) for seconds, cost in week_plan.cost_history)
    if len(points) < 2:
        return ""
    return to_svg(cost_chart(CostChart(points, business.currency)), "cost-chart")


def _money(minor: object) -> Decimal:
    return Decimal(str(minor or 0)).quantize(Decimal(1)) / 100
