"""What must stand in the stock ledger, given all that arrived; reckoned by itself, as `crush_model`."""

from collections import Counter
from dataclasses import dataclass, field
from decimal import Decimal

from tests.factories import make_consumable, make_kit
from tests.visits.api.crush_menu import MENU, TUBS
from visits.domain.kit.stock_kinds import ConsumableKind, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.models import UseRule

HER_GLOVES, GLOVES_OF_A_VISIT, RAGS_A_FOOT = Decimal(1), Decimal(2), Decimal("0.25")
GLUES = (Decimal(25), Decimal(40))


def make_stock(business):
    """Blocks, glue and wraps; gloves for each cow and some for the visit; a rag for four feet; two disinfectants."""
    gloves = Recipe(UsePer.COW, HER_GLOVES), Recipe(UsePer.VISIT, GLOVES_OF_A_VISIT)
    agent = ConsumableKind.DISINFECTANT
    return {
        **make_kit(business),
        "gloves": make_consumable(business, "Gloves", ConsumableKind.GLOVES, *gloves, unit="pair"),
        "rags": make_consumable(business, "Rags", ConsumableKind.OTHER, Recipe(UsePer.FOOT, RAGS_A_FOOT)),
        "liquid": make_consumable(business, "Liquid", agent, unit="ml"),
        "powder": make_consumable(business, "Powder", agent, unit="g", grams_per_ml=Decimal("0.833")),
    }


@dataclass
class KitModel:
    """`glue`: what a block takes by the recipe of now; `hers`: what it took when glue was first booked for a cow."""

    kit: dict
    glue: Decimal = GLUES[0]
    hers: dict = field(default_factory=dict)

    def change_recipe(self):
        """The office works with another amount of glue from now on."""
        self.set_glue(GLUES[1] if self.glue == GLUES[0] else GLUES[0])

    def set_glue(self, quantity):
        self.glue = quantity
        rules = UseRule.objects.within(self.kit["glue"].scope)
        rules.filter(consumable=self.kit["glue"]).update(quantity=quantity)

    def heard(self, model):
        """Something arrived: glue that is booked for the first time is booked by the recipe of now."""
        for kept in model.last_of("cow"):
            if dish_of(kept).used.get("wood"):
                self.hers.setdefault(kept.group, self.glue)

    def used_at(self, model):
        """(source, consumable, moment) -> how much."""
        begun, used = model.begun(), Counter()
        for kept in model.last_of("cow"):
            for item, number in self._of_cow(kept).items():
                used["cow", self.kit[item].pk, begun[kept.uid]] += number
        said = {kept.writing["content"]["consumable"]: kept for kept in model.last_of("kit")}
        for item, kept in said.items():
            used["by_hand", item, begun[kept.uid]] += Decimal(kept.writing["content"]["extra"])
        for kept in model.last_of("wash"):
            tub = tub_of(kept, self.kit)
            if tub.used:
                used["wash", self.kit[tub.product].pk, None] += tub.used
        if model.is_finished:
            used["visit", self.kit["gloves"].pk, None] = GLOVES_OF_A_VISIT
        return {use: number for use, number in used.items() if number}

    def _of_cow(self, kept):
        dish = dish_of(kept)
        blocks = dish.used.get("wood", 0)
        return {
            **dish.used,
            "glue": blocks * self.hers.get(kept.group, Decimal(0)),
            "gloves": HER_GLOVES,
            "rags": len(dish.entry["feet"]) * RAGS_A_FOOT,
        }


def dish_of(kept):
    return next(dish for dish in MENU if dish.entry == kept.writing["content"]["entry"])


def tub_of(kept, kit):
    content = kept.writing["content"]
    keys = {item.pk: name for name, item in kit.items()}
    said = keys.get(content["consumable"]), content["dilution"], content["litres"]
    return next(tub for tub in TUBS if (tub.product, tub.dilution, tub.litres) == said)
