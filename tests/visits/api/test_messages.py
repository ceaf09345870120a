"""What farms are told, and what a visit used up, over the API."""

from datetime import timedelta

from django.utils import timezone

from tests.factories import blocked_foot, make_kit, planned, put_down, under_way
from tests.visits.api.caller import Caller, code_of
from tests.visits.services.messages.told_farms import SETTLED, mailed, switch_on
from visits.domain.messages.message_kinds import MessageKind
from visits.services.messages.tell_hour_news import tell_hour_news
from visits.services.tell_hour import tell_hour


def test_the_hours_and_the_switches_are_kept(owner, house):
    told = owner.get("/message-rules/").json()
    assert (told["tomorrow_at"], told["switched_on"]) == ("16:00", [])
    changed = owner.patch("/message-rules/", {"tomorrow_at": "15:30"})
    assert (changed.status_code, changed.json()["tomorrow_at"]) == (200, "15:30"), changed.content
    night = owner.patch("/message-rules/", {"tomorrow_at": "23:00"})
    assert code_of(night) == (409, "message_rule_makes_no_sense")
    on = owner.post("/message-rules/switch/", {"kind": "booked", "is_on": True})
    assert on.json()["switched_on"] == ["booked"]
    assert code_of(Caller(house.trimmer).get("/message-rules/")) == (403, "not_allowed")


def test_a_text_of_ones_own_is_written_and_given_back(owner):
    text = {"kind": "booked", "language": "en", "subject": "We come to {farm}", "body": "", "short": ""}
    wrote = owner.post("/message-texts/write/", text)
    assert (wrote.status_code, wrote.json()["subject"]) == (200, "We come to {farm}"), wrote.content
    items = owner.get("/message-texts/").json()["items"]
    assert text["subject"] in [each["subject"] for each in items if each["kind"] == "booked"]
    wrong = owner.post("/message-texts/write/", {**text, "subject": "{nobody}"})
    assert code_of(wrong) == (409, "text_makes_no_sense")
    back = owner.post("/message-texts/write/", {**text, "subject": ""}).json()
    assert back["subject"] != text["subject"]


def test_what_a_farm_was_told_of_its_visit_is_listed(owner, house):
    switch_on(house, MessageKind.BOOKED)
    mailed(house)
    visit = planned(house.farm, house.van)
    tell_hour_news(visit=visit, at=visit.changed_at + SETTLED)
    told = owner.get(f"/visits/{visit.pk}/messages/").json()["items"]
    assert [(each["kind"], each["channel"]) for each in told] == [("booked", "mail")]
    tell_hour(visit=visit, at=timezone.now(), by=house.owner)
    assert code_of(Caller(house.client).get(f"/visits/{visit.pk}/messages/")) == (403, "not_allowed")


def test_what_a_visit_used_up_is_told_with_its_cost(owner, house):
    make_kit(house.business)
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    told = owner.get(f"/visits/{visit.pk}/uses/").json()
    assert told["items"]
    assert all(item["used"] == item["by_cows"] for item in told["items"])
    assert told["is_cost_known"] is False


def test_a_text_is_looked_at_before_it_is_written(owner, house):
    text = {
        "kind": "booked",
        "language": "en",
        "subject": "We come to {farm}",
        "body": "",
        "short": "Come {farm}",
    }
    invented = owner.post("/message-texts/look/", text).json()
    assert (invented["visit"], invented["subject"], invented["sms_parts"]) == (
        None,
        "We come to Low Croft",
        1,
    )
    visit = planned(house.farm, house.van, timezone.now() + timedelta(days=2))
    looked = owner.post("/message-texts/look/", text).json()
    assert (looked["visit"], looked["sms"].split(house.farm.name)[0]) == (visit.pk, "Come ")
    wrong = owner.post("/message-texts/look/", {**text, "subject": "{nobody}"})
    assert code_of(wrong) == (409, "text_makes_no_sense")
    report = owner.post("/message-texts/look/", {**text, "kind": "report", "short": ""}).json()
    assert (report["sms"], report["sms_parts"]) == (None, None)
    items = owner.get("/message-texts/").json()["items"]
    assert text["subject"] not in [each["subject"] for each in items]


def test_what_was_used_is_put_right_by_hand(house):
    trimmer, wood = Caller(house.trimmer), make_kit(house.business)["wood"].pk
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())

    def used(extra):
        answer = trimmer.post(f"/visits/{visit.pk}/uses/", {"consumable": wood, "extra": extra})
        assert answer.status_code == 200, answer.content
        found = {each["consumable"]: each for each in answer.json()["items"]}
        return tuple(found[wood][name] for name in ("by_cows", "by_hand", "used"))

    assert used("2") == ("1.00", "2.00", "3.00")
    assert used("-0.5") == ("1.00", "-0.50", "0.50")
    assert used("0") == ("1.00", "0.00", "1.00")
    office = Caller(house.office).post(f"/visits/{visit.pk}/uses/", {"consumable": wood, "extra": "1"})
    assert code_of(office) == (403, "not_allowed")
    missing = trimmer.post(f"/visits/{visit.pk}/uses/", {"consumable": 999_999, "extra": "1"})
    assert (missing.status_code, missing.json()["faults"][0]["field"]) == (422, "consumable")


def test_the_papers_for_the_crush_are_those_of_the_page(house):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    trimmer = Caller(house.trimmer)
    told = trimmer.get(f"/visits/{visit.pk}/crush/papers/").json()
    page = trimmer.client.get(f"/visits/{visit.pk}/crush/papers.json").json()
    catalogue = told.pop("catalogue")
    assert page.keys() == {*told, *catalogue}
    timeless = page.keys() - {"fetched_at"}
    assert {name: {**told, **catalogue}[name] for name in timeless} == {name: page[name] for name in timeless}
    assert code_of(Caller(house.office).get(f"/visits/{visit.pk}/crush/papers/")) == (403, "not_allowed")
