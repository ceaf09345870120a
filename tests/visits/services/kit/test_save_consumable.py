"""A consumable and its recipe are kept, or refused with what is to be mended."""

from decimal import Decimal

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_house, make_kit, stock_up
from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import Unit, UsePer
from visits.domain.kit.typed_recipe import TypedLine
from visits.models import Consumable, UseRule
from visits.services.kit.save_consumable import PackNotWhole, RecipeRefused, UnitInUse, save_consumable

D = Decimal


@pytest.fixture
def house(db):
    return make_house()


def glue(house, **fields):
    words = {"name": "Two-part glue", "kind": "glue", "unit": "ml", "grams_per_ml": D("1.2"), **fields}
    return Consumable(business=house.business, **words)


def recipe(item):
    rows = UseRule.objects.within(item.scope).filter(consumable=item)
    return list(rows.order_by("per", "block_kind").values_list("per", "block_kind", "quantity"))


def test_a_new_one_is_kept_with_its_recipe_in_its_own_unit(house):
    lines = [
        TypedLine(UsePer.BLOCK, D(48), Unit.GRAM),
        TypedLine(UsePer.BLOCK, D(10), block_kind=BlockKind.SHOE),
        TypedLine(UsePer.VISIT, D(5)),
    ]
    item = save_consumable(consumable=glue(house, name="  Two-part   glue "), lines=lines)
    assert item.name == "Two-part glue"
    assert recipe(item) == [("block", "", D(40)), ("block", "shoe", D(10)), ("visit", "", D(5))]


def test_mended_it_has_the_new_lines_alone(house):
    item = save_consumable(consumable=glue(house), lines=[TypedLine(UsePer.BLOCK, D(40))])
    item.is_active = False
    save_consumable(consumable=item, lines=[TypedLine(UsePer.COW, D(1))])
    item.refresh_from_db()
    assert (item.is_active, recipe(item)) == (False, [("cow", "", D(1))])


def test_a_recipe_that_is_nonsense_changes_nothing(house):
    item = save_consumable(consumable=glue(house), lines=[TypedLine(UsePer.BLOCK, D(40))])
    item.supplier = "Somebody else"
    with pytest.raises(
        RecipeRefused, match=r"2 lines for every cow: .* Say how much is used with every cow\."
    ):
        save_consumable(consumable=item, lines=[TypedLine(UsePer.COW, D(1)), TypedLine(UsePer.COW, None)])
    item.refresh_from_db()
    assert (item.supplier, recipe(item)) == ("", [("block", "", D(40))])


def test_the_unit_of_what_has_lines_in_the_ledger_stays(house):
    item = make_kit(house.business)["glue"]
    item.unit = "g"
    save_consumable(consumable=item, lines=[])
    stock_up(item, 500, at=NOON, van=house.van)
    item.unit = "ml"
    with pytest.raises(UnitInUse, match="under another name") as refused:
        save_consumable(consumable=item, lines=[])
    assert refused.value.field == "unit"


def test_blocks_come_in_whole_packs(house):
    with pytest.raises(PackNotWhole, match="whole number"):
        save_consumable(consumable=glue(house, unit="each", pack=D("2.5")), lines=[])
    assert save_consumable(consumable=glue(house, pack=D("2.5")), lines=[]).pack == D("2.5")


def test_two_of_one_name_are_refused_and_another_businesss_name_is_free(house):
    save_consumable(consumable=glue(house), lines=[])
    with pytest.raises(ValidationError):
        save_consumable(consumable=glue(house), lines=[])
    assert save_consumable(consumable=glue(make_house("Far")), lines=[]).pk
