"""A list of consumables is read in as a whole or not at all."""

from decimal import Decimal
from uuid import uuid4

import pytest

from tests.factories import NOON, make_house
from tests.many_hands import ManyHands
from visits.models import Consumable, StockMovement
from visits.selectors.kit.kit_sheets import kit_sheets
from visits.services.kit.read_in_kit import KitListRefused, read_in_kit

HEAD = [
    *("name", "kind", "unit", "pack", "per wooden block"),
    *("stock in Store", "stock in Van 1", "lot", "best before", "stock cost"),
]
BLOCK = ["Block", "block", "each", "40", "1", "30", "12", "L7", "2027-03-02", "84.10"]
WRAP = ["Wrap", "wrap", "each", "120", "", "", "", "", "", ""]


@pytest.fixture
def house(db):
    return make_house()


def read_in(house, *rows, uid=None):
    return read_in_kit(
        business=house.business, table=[HEAD, *rows], at=NOON, by=house.office, uid=uid or uuid4()
    )


def lines_of(house):
    rows = StockMovement.objects.within(house.scope).select_related("place")
    return [(row.place.name, row.kind, row.quantity, row.cost) for row in rows]


def test_new_consumables_come_with_their_recipe_and_their_stock_as_one_lot(house):
    plan = read_in(house, BLOCK, WRAP)
    assert [item.sheet.name for item in plan.new] == ["Block", "Wrap"]
    assert {item.sheet.name: item.sheet for item in kit_sheets(house.scope)} == {
        item.sheet.name: item.sheet for item in plan.new
    }
    assert lines_of(house) == [
        ("Store", "bought", Decimal(42), Decimal("84.10")),
        ("Store", "moved", Decimal(-12), None),
        ("Van 1", "moved", Decimal(12), None),
    ]
    lots = {row.lot.code for row in StockMovement.objects.within(house.scope).select_related("lot")}
    assert lots == {"L7"}


def test_a_second_time_finds_nothing_to_do(house):
    read_in(house, BLOCK, WRAP)
    plan = read_in(house, BLOCK, WRAP)
    assert (plan.new, plan.changed, len(plan.unchanged)) == ((), (), 2)
    assert len(lines_of(house)) == 3


def test_a_known_one_is_changed(house):
    read_in(house, WRAP)
    plan = read_in(house, ["wrap", "", "", "100", "", "", "", "", "", ""])
    (item,) = plan.changed
    row = Consumable.objects.within(house.scope).get()
    assert (item.key, row.name, row.pack) == (row.pk, "Wrap", Decimal(100))


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ([WRAP, ["", *BLOCK[1:]]], "Line 3: name: say what it is"),
        ([WRAP, [*BLOCK[:8], "2020-03-02", ""]], "Line 3, Block: Block: by that date it was past it"),
        ([WRAP, [*BLOCK[:3], "0.04", *BLOCK[4:]]], "Line 3, Block: pack: what is counted in each"),
        ([WRAP, ["Paste", "other", "ml", "1000", "", "9999999", "", "", "", ""]], "cannot be meant"),
    ],
)
def test_with_one_fault_nothing_is_read_in(house, rows, said):
    with pytest.raises(KitListRefused, match="Nothing was read in") as fault:
        read_in(house, *rows)
    assert said in fault.value.message
    assert not Consumable.objects.within(house.scope).exists()
    assert lines_of(house) == []


def test_a_table_without_the_needed_heading_is_refused(house):
    with pytest.raises(KitListRefused, match="headed “name”"):
        read_in_kit(business=house.business, table=[["x"], ["y"]], at=NOON, by=house.office, uid=uuid4())


@pytest.mark.django_db(transaction=True)
def test_lists_read_in_at_once_in_any_order_wait_for_each_other_and_make_each_thing_once(
    tmp_path, monkeypatch
):
    house = make_house()

    def act(number):
        rows = [[f"Thing {n}", "other", "each", f"{40 + number}", "1", "9", *[""] * 4] for n in range(6)]
        return read_in(house, *(rows if number % 2 else reversed(rows))) is not None

    hands = ManyHands(tmp_path, monkeypatch)
    assert all(hands(act, list(range(4))))
    (seen,) = hands(lambda _: lines_of(house), [0])
    assert seen == [("Store", "bought", Decimal(9), None)] * 6
