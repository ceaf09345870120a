"""What a visit used up of the kit, and what that cost."""

from datetime import datetime
from uuid import UUID, uuid4, uuid5

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import StepApi, ToldApi
from trimops.api.op import Op, Said
from trimops.api.refusals import CannotBeMeant
from visits.api.kit.picked import KeyField
from visits.domain.crush_writing import WritingKind
from visits.domain.read_batch import read_batch
from visits.models import Visit
from visits.selectors.kit.visit_materials import visit_materials
from visits.selectors.kit.visit_uses import visit_uses
from visits.services.take_writings import take_writings


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


class UseWord(serializers.Serializer):  # type: ignore[type-arg]
    """So much more of a consumable was used than the cows say, in its unit; below nought: so much less. It takes the
    place of what was said of it before; nought takes it back."""

    consumable = KeyField()
    extra = serializers.DecimalField(max_digits=7, decimal_places=2)


class VisitUsesApi(ToldApi, StepApi[Visit]):
    """What a visit used up: it counts itself from what is noted at the crush. What was used besides is put right by
    hand, here or on a phone; the latest word on a consumable counts. Refused (422): a visit that was not begun."""

    ops = {
        "get": Op(Action.SEE_KIT, "list_visit_uses", "What a visit used up", shows=VisitUsesShown),
        "post": Op(
            Action.WORK_AT_CRUSH,
            "put_use_right",
            "Put right what a visit used",
            takes=UseWord,
            shows=VisitUsesShown,
            repeats=True,
        ),
    }

    model = Visit
    related = ("business", "farm")

    def act(self, row: Visit, content: Said) -> Said:
        batch, _ = read_batch(use_by_hand(row.uid, self.seat.user.pk, content, self.now))
        (answer,) = take_writings(visit=row, batch=batch, at=self.now, by=self.seat.user)
        if answer.faults:
            raise CannotBeMeant(
                faults=[(fault.field.rpartition(".")[2], fault.reason) for fault in answer.faults]
            )
        return self.told()

    def told(self) -> Said:
        visit = self.fetch(Visit, self.kwargs["pk"])
        materials = visit_materials(self.scope, [visit])[visit.pk]
        return {
            "items": visit_uses(self.scope, visit),
            "cost": materials.cost,
            "is_cost_known": all(line.is_known for line in materials.lines),
        }


def use_by_hand(visit: UUID, user: int, content: Said, now: datetime) -> Said:
    """What a phone would send to say it: all of one person's programs are one phone, one consumable is one thing."""
    return {
        "phone": str(uuid5(visit, f"program of {user}")),
        "sent_at": now.isoformat(),
        "writings": [
            {
                "uid": str(uuid4()),
                "kind": WritingKind.KIT.value,
                "record": str(uuid5(visit, f"used {content['consumable']}")),
                "made_at": now.isoformat(),
                "content": {"consumable": content["consumable"], "extra": f"{content['extra']:f}"},
            }
        ],
    }
