"""Stock by the API: bought, moved, counted, written off, ordered, loaded; each by the rules of the pages."""

import pytest

from tests.factories import make_house, make_kit
from tests.visits.api.caller import code_of
from visits.models import StockMovement
from visits.services.kit.stock_place import store_of


@pytest.fixture
def wood(kit):
    return kit["wood"].pk


def buy(caller, place, item, quantity, **more):
    line = {"consumable": item, "quantity": quantity, **more}
    return caller.post("/kit/purchases/", {"place": place, "items": [line]})


def lies(caller, item):
    """Place -> balance."""
    rows = {row["consumable"]: row for row in caller.get("/kit/stock/").json()["items"]}
    return {each["place"]: each["balance"] for each in rows[item]["places"]}


def test_a_consumable_is_kept_with_its_recipe(office):
    word = {"name": "Glue, strong", "kind": "glue", "unit": "ml", "pack": "200", "price": "31.50"}
    recipe = [{"per": "block", "block_kind": "wood", "quantity": "12.5"}]
    made = office.post("/kit/consumables/", {**word, "recipe": recipe})
    assert (made.status_code, made.json()["recipe"][0]["quantity"]) == (201, "12.50")
    at = made["Location"].removeprefix("/api/v1")
    changed = office.patch(at, {"lead_days": 9}, match=made["ETag"])
    assert changed.json()["recipe"] == made.json()["recipe"]
    assert office.patch(at, {"recipe": []}).json()["recipe"] == []
    twice = office.patch(at, {"recipe": recipe * 2})
    assert code_of(twice) == (409, "recipe_refused")
    assert office.patch(at, {"price": "-1.00"}).status_code == 400
    assert office.post("/kit/consumables/", word).status_code == 422


def test_stock_is_bought_moved_counted_and_written_off(office, trimmer, places, wood):
    assert buy(office, places["store"], wood, "40", cost="88.00", lot_code="L1").status_code == 200
    move = {"from_place": places["store"], "to_place": places["van"]}
    moved = office.post("/kit/moves/", {**move, "items": [{"consumable": wood, "quantity": "15"}]})
    assert [line["quantity"] for line in moved.json()["lines"]] == ["-15.00", "15.00"]
    assert lies(office, wood) == {places["store"]: "25.00", places["van"]: "15.00"}
    count = {"place": places["van"], "items": [{"consumable": wood, "quantity": "12"}]}
    assert office.post("/kit/counts/", count).status_code == 403
    assert trimmer.post("/kit/counts/", count).json()["items"] == [
        {"consumable": wood, "counted": "12.00", "had": "15.00"}
    ]
    off = {"place": places["van"], "because": "broken", "items": [{"consumable": wood, "quantity": "2"}]}
    assert office.post("/kit/write-offs/", off).status_code == 200
    assert lies(office, wood)[places["van"]] == "10.00"
    ledger = office.get(f"/kit/consumables/{wood}/ledger/").json()["items"]
    assert [row["kind"] for row in ledger] == ["written_off", "counted", "moved", "moved", "bought"]
    (van, store) = sorted(
        office.get(f"/kit/consumables/{wood}/lots/").json()["lots"], key=lambda lot: lot["quantity"]
    )
    assert (van["place"], van["code"], store["quantity"]) == (places["van"], "L1", "25.00")


def test_the_same_key_books_once(office, places, wood, house):
    body = {"place": places["store"], "items": [{"consumable": wood, "quantity": "4"}]}
    first, again = (office.post("/kit/purchases/", body, key="delivery-1") for _ in range(2))
    assert first.content == again.content
    assert StockMovement.objects.within(house.scope).count() == 1


def test_more_than_is_there_is_taken_only_on_somebodys_word(office, places, wood):
    move = {
        "from_place": places["store"],
        "to_place": places["van"],
        "items": [{"consumable": wood, "quantity": "3"}],
    }
    assert code_of(office.post("/kit/moves/", move)) == (409, "more_than_is_there")
    assert office.post("/kit/moves/", {**move, "is_really_there": True}).status_code == 200


@pytest.mark.parametrize(
    ("address", "more"),
    [
        ("purchases", {}),
        ("counts", {}),
        ("write-offs", {"because": "lost"}),
    ],
)
def test_what_is_of_another_business_is_told_with_its_place(trimmer, places, wood, address, more):
    theirs = make_house("Other").business
    foreign = make_kit(theirs)["wood"]
    body = {"place": places["store"], "items": [{"consumable": wood, "quantity": "1"}], **more}
    line = {"consumable": foreign.pk, "quantity": "1"}
    refused = trimmer.post(f"/kit/{address}/", {**body, "items": [*body["items"], line]})
    assert refused.status_code == 422
    assert refused.json()["faults"][0]["field"] == "items[1].consumable"
    refused = trimmer.post(f"/kit/{address}/", {**body, "place": store_of(foreign.scope).pk})
    assert (refused.status_code, refused.json()["faults"][0]["field"]) == (422, "place")


def test_an_order_is_noted_comes_in_part_and_the_rest_is_called_off(office, places, wood):
    seen = office.get("/kit/order-list/").json()["seen"]
    word = {"supplier": "Moor Supplies", "lines": [{"consumable": wood, "packs": 20}], "seen": seen}
    made = office.post("/kit/orders/", word)
    assert made.status_code == 201
    assert code_of(office.post("/kit/orders/", word)) == (409, "ordered_meanwhile")
    at, (line,) = made["Location"].removeprefix("/api/v1"), made.json()["lines"]
    came = {"place": places["store"], "lines": [{"line": line["id"], "quantity": "5", "cost": "9.00"}]}
    assert office.post(f"{at}arrived/", came).json()["lines"][0]["arrived"] == "5.00"
    assert lies(office, wood)[places["store"]] == "5.00"
    assert office.get("/kit/orders/?is_open=true").json()["items"][0]["id"] == made.json()["id"]
    off = office.post(f"{at}call-off/", {"because": "Sold out"})
    assert off.json()["called_off_at"] is not None
    assert office.get("/kit/orders/?is_open=true").json()["items"] == []
    assert code_of(office.post(f"{at}arrived/", came)) == (409, "order_refused")
    wrong = office.post(f"{at}arrived/", {**came, "lines": [{"line": 987654, "quantity": "1"}]})
    assert wrong.json()["faults"][0]["field"] == "lines[0].line"


def test_one_line_of_an_order_is_expected_no_more(office, wood):
    made = office.post("/kit/orders/", {"lines": [{"consumable": wood, "packs": 1}]})
    key = made.json()["lines"][0]["id"]
    assert office.post(f"/kit/order-lines/{key}/close/").json()["closed_at"] is not None
    assert office.get(f"/kit/orders/{made.json()['id']}/").json()["called_off_at"] is not None


def test_a_list_of_consumables_is_looked_at_and_read_in_whole_or_not_at_all(office):
    lines = "name,kind,unit\nGloves blue,gloves,pair\n"
    looked = office.post("/kit/lists/look/", {"lines": lines})
    assert looked.json() == {"new": ["Gloves blue"], "changed": [], "refused": []}
    assert office.get("/kit/consumables/?name=gloves").json()["items"] == []
    assert office.post("/kit/lists/", {"lines": lines}).json()["new"] == ["Gloves blue"]
    assert len(office.get("/kit/consumables/?name=gloves").json()["items"]) == 1
    faulty = f"{lines}Odd,nonsense,pair\n"
    assert office.post("/kit/lists/look/", {"lines": faulty}).json()["refused"][0]["line"] == 3
    assert code_of(office.post("/kit/lists/", {"lines": faulty})) == (409, "kit_list_refused")
    assert office.post("/kit/lists/", {"lines": "one"}).status_code == 422


def test_tables_of_the_kit_are_files(office, client_of_farm, kit):
    answer = office.get("/kit/files/stock/")
    assert (answer.status_code, answer["Content-Type"]) == (200, "text/csv; charset=utf-8")
    assert office.get("/kit/files/nonsense/").status_code == 404
    assert client_of_farm.get("/kit/files/stock/").status_code == 403
