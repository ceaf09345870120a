"""What a phone sends from the crush, through all of the program."""

import logging

import pytest
from django.db import OperationalError, connection
from django.middleware.csrf import get_token
from django.test import Client, RequestFactory
from django.test.utils import CaptureQueriesContext

from farms.models import Cow
from tests.factories import NOON, finish, make_blade, make_house, planned, under_way
from tests.visits.api.phone import Phone, address, blocked, cow_content, foot, outcomes, post
from visits.models import Blade, BladeTurn, Block, CrushWriting, Recheck, Trim


def test_a_cow_that_was_sent_is_kept_and_shows(house, visit, phone):
    sent = phone.write(cow_content(house.cow.pk, blocked(), note="Quiet"))
    told = phone.send()
    assert told["answers"] == [
        {"uid": sent["uid"], "outcome": "kept", "faults": [], "shows": sent["uid"], "beside": []}
    ]
    trim = Trim.objects.within(house.scope).get()
    assert (trim.cow, str(trim.client_id), trim.note, trim.kind) == (
        house.cow,
        sent["record"],
        "Quiet",
        "corrective",
    )
    assert Block.objects.within(house.scope).count() == Recheck.objects.within(house.scope).count() == 1
    assert told["visit"]["state"] == "under_way"


def test_sent_again_it_is_known_and_nothing_changes(house, phone):
    sent = phone.write(cow_content(house.cow.pk, blocked()))
    phone.send()
    assert outcomes(phone.send([sent])) == ["known"]
    assert CrushWriting.objects.within(house.scope).count() == 1


def test_one_bad_writing_does_not_hold_up_the_rest_and_is_told_by_field(house, phone):
    phone.write(cow_content(house.cow.pk, foot(findings=[{"lesion": "SU", "claw": "lateral", "zone": 99}])))
    phone.write(cow_content(house.cow.pk, foot()))
    told = phone.send()
    assert outcomes(told) == ["refused", "kept"]
    assert told["answers"][0]["faults"] == [
        {"field": "content.entry.feet[0].findings[0].zone", "reason": "must be from 0 to 12"}
    ]


def test_taking_a_cow_back_and_putting_her_down_again(house, phone):
    first = phone.write(cow_content(house.cow.pk, blocked()))
    gone = phone.undo(first)
    phone.send()
    assert not Trim.objects.within(house.scope).exists()
    assert not Block.objects.within(house.scope).exists()
    phone.edit(gone, is_gone=False)
    phone.send()
    assert Trim.objects.within(house.scope).get().version == 3
    assert Block.objects.within(house.scope).exists()


def problem(answer, status, code):
    assert (answer.status_code, answer["Content-Type"]) == (status, "application/problem+json")
    told = answer.json()
    assert (told["status"], told["code"]) == (status, code)
    return told


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"phone": "mine"}, "phone"),
        ({"sent_at": None}, "sent_at"),
        ({"seen": "all"}, "seen"),
        ({"begun": {"at": "now", "checked": True}}, "begun.at"),
        ({"writings": "none"}, "writings"),
        ({"colour": "red"}, "colour"),
    ],
)
def test_an_envelope_that_is_wrong_is_told_by_its_field_and_nothing_is_kept(house, phone, changes, field):
    phone.write(cow_content(house.cow.pk))
    told = problem(phone.post({**phone.body(), **changes}), 400, "malformed")
    assert [fault["field"] for fault in told["faults"]] == [field]
    assert not CrushWriting.objects.within(house.scope).exists()


@pytest.mark.parametrize("body", ["", "{", "[]", "null", "NaN", b"\xff\xfe", "[" * 20_000, '"\\ud800"'])
def test_what_is_no_sending_at_all_is_told_so(phone, body):
    problem(phone.post(body), 400, "malformed")


def test_more_than_a_hundred_at_once_are_too_many(house, phone):
    for _ in range(101):
        phone.write(cow_content(house.cow.pk))
    problem(phone.post(phone.body()), 413, "too_large")
    assert outcomes(phone.send(phone.waiting[:100])) == ["kept"] * 100


def test_more_than_two_megabytes_at_once_are_too_much(phone):
    problem(phone.post(" " * 2_000_001), 413, "too_large")


def test_another_kind_of_content_is_refused(phone):
    answer = phone.client.post(address(phone.visit), {"phone": "x"})
    problem(answer, 415, "wrong_kind_of_content")


def test_a_session_that_is_gone_is_told_by_its_code_and_after_signing_in_it_goes_on(house, phone):
    phone.write(cow_content(house.cow.pk))
    phone.client.logout()
    problem(phone.post(phone.body()), 401, "not_signed_in")
    phone.client.force_login(house.trimmer)
    assert outcomes(phone.send()) == ["kept"]


def test_the_token_of_the_form_is_asked_for(house, visit):
    """A browser adds its cookie to a request of another site too; the token only ours can read."""
    client = Client(enforce_csrf_checks=True)
    client.force_login(house.trimmer)
    phone = Phone(client, visit)
    assert phone.post(phone.body()).status_code == 403
    client.cookies["csrftoken"] = token = get_token(RequestFactory().get("/"))[:32]
    assert post(client, visit, phone.body(), headers={"X-CSRFToken": token}).status_code == 200


def test_others_are_told_in_portions_by_the_cursor_each_once(house, visit, phone, signed_in):
    other = Phone(signed_in(house.owner), visit)
    for number in range(250):
        other.write(cow_content(house.cow.pk, note=str(number)))
        if len(other.waiting) == 100:
            other.send()
    other.send()
    first, second, third = phone.send(), phone.send(), phone.send()
    assert [len(told["others"]) for told in (first, second, third)] == [200, 50, 0]
    assert [told["more"] for told in (first, second, third)] == [True, False, False]
    told = [*first["others"], *second["others"]]
    assert [row["content"]["entry"]["note"] for row in told] == [str(number) for number in range(250)]
    assert [row["shows"] for row in told] == [False] * 249 + [True]
    assert {(row["by"], row["phone"]) for row in told} == {(house.owner.name, other.uid)}
    assert (first["cursor"], third["cursor"]) == (told_pk(house, 199), told_pk(house, 249))


def told_pk(house, place):
    return CrushWriting.objects.within(house.scope).order_by("pk")[place].pk


def test_one_is_not_told_what_one_wrote_oneself(house, phone):
    phone.write(cow_content(house.cow.pk))
    assert phone.send()["others"] == phone.send()["others"] == []


def test_the_answer_says_how_far_the_visit_is(house, signed_in):
    phone = Phone(signed_in(house.trimmer), planned(house.farm, house.van))
    assert phone.send()["visit"] == {"state": "planned", "started_at": None, "finished_at": None}
    phone.begun = {"at": phone.clock(), "checked": True}
    told = phone.send()["visit"]
    assert (told["state"], told["started_at"] is not None) == ("under_way", True)


def test_a_visit_of_another_business_is_not_there(phone):
    theirs = under_way((other := make_house("Fell & Beck")).farm, other.van)
    problem(post(phone.client, theirs, phone.body()), 404, "not_found")


def blades(at, **said):
    return {"in_hand": [], "went_dull": [], "cracked": [], "chipped": [], "at": at, **said}


def test_the_knives_of_two_phones_are_kept_and_told_and_a_foreign_one_is_refused_by_its_place(
    house, visit, phone, signed_in
):
    red, theirs = make_blade(house.van, "Red"), make_blade(make_house("Other").van, "Theirs")
    phone.write(blades(phone.clock(), in_hand=[red.pk]), kind="blade")
    phone.write(blades(phone.clock(), went_dull=[red.pk, theirs.pk]), kind="blade")
    phone.write({**blades(phone.clock()), "cracked": [red.pk], "in_hand": [red.pk]}, kind="blade")
    told = phone.send()
    assert outcomes(told) == ["kept", "refused", "refused"]
    fields = [[fault["field"] for fault in answer["faults"]] for answer in told["answers"][1:]]
    assert fields == [["content.went_dull[1]"], ["content.in_hand[0]"]]

    other = Phone(signed_in(house.owner), visit)
    other.write(blades(other.clock(), cracked=[red.pk]), kind="blade")
    heard = other.send()
    assert [row["content"]["in_hand"] for row in heard["others"]] == [[red.pk]]
    assert BladeTurn.objects.within(house.scope).filter(visit=visit).count() == 2
    assert Blade.objects.within(house.scope).get(pk=red.pk).fault == "cracked"


def test_the_office_does_not_write_at_the_crush(house, visit, signed_in):
    problem(post(signed_in(house.office), visit, {}), 403, "not_allowed")


def test_a_fault_of_the_program_is_no_refusal_and_loses_nothing(house, phone, caplog):
    caplog.set_level(logging.CRITICAL, logger="django.request")
    phone.write(cow_content(house.cow.pk, blocked()))

    def give_out(execute, sql, params, many, context):
        if sql.startswith("INSERT") and "visits_recheck" in sql:
            raise OperationalError("the disk is full")
        return execute(sql, params, many, context)

    with connection.execute_wrapper(give_out):
        assert phone.post(phone.body()).status_code == 500
    assert not CrushWriting.objects.within(house.scope).exists()
    assert outcomes(phone.send()) == ["kept"]


def test_a_phone_that_only_asks_what_others_wrote_takes_no_lock(house, phone):
    phone.begun = {"at": phone.clock(), "checked": True}
    phone.send()
    with CaptureQueriesContext(connection) as asked:
        phone.send()
    assert not [
        q["sql"] for q in asked.captured_queries if q["sql"].startswith(("BEGIN", "SAVEPOINT", "UPDATE"))
    ]


def test_a_phone_that_was_long_in_the_van_brings_nothing_of_an_erased_farm_back(house, visit, phone):
    finish(visit, house.trimmer)
    house.farm.erased_at = NOON
    house.farm.save()
    phone.write(cow_content({"uid": phone.new_uid(), "number": "777", "is_another": False}, blocked()))
    told = phone.send()
    assert outcomes(told) == ["refused"]
    assert "erased" in told["answers"][0]["faults"][0]["reason"]
    assert not Cow.objects.within(house.scope).filter(number="777").exists()
