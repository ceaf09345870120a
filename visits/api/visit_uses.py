"""What a visit used up of the kit, and what that cost."""

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import ToldApi
from trimops.api.op import Op, Said
from visits.models import Visit
from visits.selectors.kit.visit_materials import visit_materials
from visits.selectors.kit.visit_uses import visit_uses


class VisitUseShown(serializers.Serializer):  # type: ignore[type-arg]
    """Of one consumable, in its unit: what the cows say, what is used once a visit, what was mixed, and what was put
    right by hand (below nought where fewer were used than was counted)."""

    consumable = serializers.IntegerField(source="consumable.pk")
    name = serializers.CharField(source="consumable.name")
    by_cows = serializers.DecimalField(14, 2)
    once = serializers.DecimalField(14, 2)
    mixed = serializers.DecimalField(14, 2)
    by_hand = serializers.DecimalField(14, 2)
    used = serializers.DecimalField(14, 2)


class VisitUsesShown(serializers.Serializer):  # type: ignore[type-arg]
    """All of it. `cost` is without tax; not `is_cost_known`: some of it was bought without a price."""

    items = VisitUseShown(many=True)
    cost = serializers.DecimalField(14, 2)
    is_cost_known = serializers.BooleanField()


class VisitUsesApi(ToldApi):
    """What a visit used up: it counts itself from what is noted at the crush, and phones put it right."""

    ops = {"get": Op(Action.SEE_KIT, "list_visit_uses", "What a visit used up", shows=VisitUsesShown)}

    def told(self) -> Said:
        visit = self.fetch(Visit, self.kwargs["pk"])
        materials = visit_materials(self.scope, [visit])[visit.pk]
        return {
            "items": visit_uses(self.scope, visit),
            "cost": materials.cost,
            "is_cost_known": all(line.is_known for line in materials.lines),
        }
