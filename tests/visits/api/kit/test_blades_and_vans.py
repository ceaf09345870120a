"""Knives, vans, the van check and the evening by the API."""

from datetime import timedelta

import pytest
from django.utils import timezone

from tests.factories import confirmed, make_blade, make_house, stock_up
from tests.visits.api.caller import code_of
from visits.models import DayOff, VanOut

HOURS = {
    "weekdays": [0, 2, 4],
    "starts": "06:30",
    "ends": "16:00",
    "max_work_minutes": 540,
    "max_cows": 60,
    "meal_minutes": 30,
    "meal_earliest": "11:00",
    "meal_latest": "13:30",
}


@pytest.fixture
def blade(house):
    return make_blade(house.van, "Red handle").pk


def test_a_blade_is_put_on_the_list_and_mended(trimmer, office, house):
    word = {
        "name": "Blue",
        "kind": "hoof_knife",
        "hand": "left",
        "bought_on": "2026-01-05",
        "van": house.van.pk,
    }
    made = trimmer.post("/kit/blades/", {**word, "was_used": True})
    assert (made.status_code, made.json()["state"]) == (201, "in_use")
    at = made["Location"].removeprefix("/api/v1")
    assert trimmer.patch(at, {"van": None, "thickness_mm": "2.20"}, match=made["ETag"]).json()["van"] is None
    assert trimmer.patch(at, {"thickness_mm": "0.10"}).status_code == 422
    assert trimmer.patch(at, {"was_used": True}).status_code == 400
    assert office.patch(at, {"note": "x"}).status_code == 403
    assert [row["id"] for row in office.get("/kit/blades/?state=in_use").json()["items"]] == [
        made.json()["id"]
    ]


def test_a_cracked_blade_comes_back_only_replaced(trimmer, blade):
    at = f"/kit/blades/{blade}/state/"
    assert code_of(trimmer.post(at, {"state": "out_of_use"})) == (409, "blade_state_refused")
    out = trimmer.post(at, {"state": "out_of_use", "fault": "cracked"}).json()
    assert (out["state"], out["fault"]) == ("out_of_use", "cracked")
    mended = trimmer.post(at, {"state": "in_use", "put_right": "mended"})
    assert code_of(mended) == (409, "blade_state_refused")
    sharpened = trimmer.post("/kit/sharpen/", {"blades": [{"blade": blade}]})
    assert code_of(sharpened) == (409, "sharpening_refused")
    assert trimmer.post(at, {"state": "in_use", "put_right": "replaced"}).json()["fault"] == ""


def test_blades_are_sharpened_all_or_none(trimmer, office, blade, house):
    other = make_blade(house.van, "Green").pk
    word = {"method": "belt", "grit": 400, "blades": [{"blade": blade, "before": "dull"}, {"blade": other}]}
    made = trimmer.post("/kit/sharpen/", word).json()["sharpenings"]
    assert [(row["blade"], row["method"], row["before"]) for row in made] == [
        (blade, "belt", "dull"),
        (other, "belt", "not_said"),
    ]
    assert len(office.get(f"/kit/sharpenings/?blade={blade}").json()["items"]) == 1
    foreign = make_blade(make_house("Other").van, "Theirs").pk
    for lines, path in (([blade, foreign], "blades[1].blade"), ([blade, blade], "blades")):
        refused = trimmer.post("/kit/sharpen/", {"blades": [{"blade": key} for key in lines]})
        assert (refused.status_code, refused.json()["faults"][0]["field"]) == (422, path)
    assert len(office.get("/kit/sharpenings/").json()["items"]) == 2
    edges = {edge["blade"]: edge for edge in office.get("/kit/edges/").json()["edges"]}
    assert (edges[blade]["cows"], edges[blade]["may_cut"]) == (0, True)


def test_a_van_is_kept_with_its_hours(trimmer, office, house):
    word = {
        "name": "Van 2",
        "trimmer": house.trimmer.pk,
        "base_latitude": "54.000000",
        "base_longitude": "-2.400000",
        "hours": HOURS,
    }
    made = trimmer.post("/vans/", word)
    assert (made.status_code, made.json()["hours"]) == (201, HOURS)
    at = made["Location"].removeprefix("/api/v1")
    changed = trimmer.patch(at, {"base_name": "Barn"}, match=made["ETag"])
    assert (changed.json()["base_name"], changed.json()["hours"]) == ("Barn", HOURS)
    assert (
        trimmer.patch(at, {"hours": {**HOURS, "ends": "06:00"}}).json()["faults"][0]["field"] == "hours.ends"
    )
    assert trimmer.patch(at, {"hours": {**HOURS, "weekdays": [0, 0]}}).status_code == 422
    assert trimmer.patch(at, {"trimmer": house.office.pk}).status_code == 422
    assert office.patch(at, {"name": "X"}).status_code == 403
    assert len(office.get("/vans/").json()["items"]) == 2


def test_a_van_stays_in_goes_out_of_action_and_works_again(trimmer, house):
    at, now = f"/vans/{house.van.pk}/", timezone.now()
    day = (now + timedelta(days=3)).date().isoformat()
    off = trimmer.post(f"{at}days-off/", {"day": day, "reason": "Fair"})
    assert off.json()["days_off"] == [{"day": day, "reason": "Fair"}]
    assert trimmer.post(f"{at}days-off/", {"day": day, "is_off": False}).json()["days_off"] == []
    assert not DayOff.objects.within(house.scope).exists()
    span = {"since": now.isoformat(), "until": (now + timedelta(hours=5)).isoformat()}
    (out,) = trimmer.post(f"{at}outs/", {"because": "crush", **span}).json()["outs"]
    turned = {"since": span["until"], "until": span["since"]}
    assert code_of(trimmer.post(f"{at}outs/", {"because": "van", **turned})) == (
        409,
        "happening_makes_no_sense",
    )
    assert trimmer.post(f"/van-outs/{out['id']}/end/").json()["outs"] == []
    assert VanOut.objects.within(house.scope).get().until < now + timedelta(hours=5)


def test_a_van_is_checked_and_loaded_by_what_was_seen(office, house, kit, places):
    now = timezone.now()
    stock_up(kit["wood"], 60, at=now - timedelta(days=30))
    visit = confirmed(house.farm, house.van, now + timedelta(days=1))
    at = f"/vans/{house.van.pk}/"
    check = office.get(f"{at}check/").json()
    assert (check["day"], check["farms"]) == (str(visit.planned_start.date()), 1)
    line = next(row for row in check["items"] if row["consumable"] == kit["wood"].pk)
    assert (line["in_store"], line["in_van"]) == ("60.00", "0.00")
    load = {
        "day": check["day"],
        "seen": check["seen"],
        "items": [{"consumable": kit["wood"].pk, "quantity": "6"}],
    }
    loaded = office.post(f"{at}load/", load)
    assert [row["quantity"] for row in loaded.json()["lines"]] == ["-6.00", "6.00"]
    assert code_of(office.post(f"{at}load/", load)) == (409, "loaded_meanwhile")
    assert office.get(f"{at}check/?day=1999-01-01").status_code == 422


def test_the_evening_is_told_as_its_page_tells_it(office, trimmer, house, client_of_farm, blade):
    trimmer.post(f"/kit/blades/{blade}/state/", {"state": "out_of_use", "fault": "cracked"})
    tonight = office.get("/kit/tonight/").json()
    assert {(task["job"], task["key"]) for task in tonight["tasks"]} >= {("broken", blade)}
    assert office.get("/kit/wash/").json()["vans"][0]["van"] == house.van.pk
    day = (timezone.now() + timedelta(days=2)).date().isoformat()
    weather = {"day": day, "lowest_celsius": "-6.0", "highest_celsius": "2.0"}
    assert office.post("/kit/weather/", weather).status_code == 403
    assert trimmer.post("/kit/weather/", weather).json()["lowest_celsius"] == "-6.0"
    assert trimmer.post("/kit/weather/", {**weather, "lowest_celsius": "3.0"}).status_code == 409
    assert [row["day"] for row in office.get(f"/kit/weather/?from={day}").json()["items"]] == [day]
    for address in ("/kit/tonight/", "/kit/stock/", "/vans/", "/kit/blades/"):
        assert client_of_farm.get(address).status_code == 403


def test_the_figures_are_told_with_the_days_of_rechecks(trimmer, office):
    told = trimmer.get("/figures/").json()
    assert told["kit"]["service_percent"] == 95
    assert {"what": "block wood", "first": 21, "last": 28} in told["rechecks"]["due"]
    assert office.get("/figures/").status_code == 403


def test_the_bevel_is_reckoned_for_the_steel_and_the_angle(trimmer):
    told = trimmer.get("/kit/bevel/?thickness=3&angle=30").json()
    assert round(told["width"], 6) == 6
    assert [(line["angle"], round(line["times"], 2)) for line in told["lines"]] == [
        *((15, 3.86), (20, 2.92), (25, 2.37), (30, 2.0)),
    ]
    assert trimmer.get("/kit/bevel/").json()["thickness"] == 2.2
    for word in ("angle=4", "angle=nan", "angle=61", "thickness=1e1", "thickness=0.1"):
        assert trimmer.get(f"/kit/bevel/?{word}").status_code == 400, word
