"""The first sign-off finishes the visit; a later one changes its words."""

import pytest

from tests.factories import TUESDAY_TEN
from tests.visits.api.phone import cow_content
from tests.visits.services.sendings import HOUR, made, outcomes, phone_at, reasons, send
from visits.models import Trim, Visit, VisitEvent

AT = TUESDAY_TEN + HOUR


@pytest.fixture
def phone(visit):
    return phone_at(visit)


def sign_off(phone, name="The herd manager", at=AT, **changes):
    words = {
        "was_done": "12 cows",
        "farm_to_do": "footbath daily",
        "washed_down": True,
        "hygiene_note": "hosed",
    }
    return phone.write({"received_by": name, **words}, kind="sign_off", **made(at), **changes)


def visit_of(phone):
    return Visit.objects.within(phone.visit.scope).get(pk=phone.visit.pk)


def test_it_finishes_the_visit_with_its_words(house, phone):
    sign_off(phone)
    send(phone, house, AT + HOUR)
    visit = visit_of(phone)
    assert (visit.state, visit.finished_at) == ("finished", AT)
    assert (visit.signed_by, visit.was_done, visit.farm_to_do) == (
        "The herd manager",
        "12 cows",
        "footbath daily",
    )
    assert (visit.washed_down, visit.hygiene_note) == (True, "hosed")


def test_a_later_one_changes_the_words_and_not_the_hour(house, phone):
    first = sign_off(phone)
    send(phone, house, AT + HOUR)
    phone.edit(first, {**first["content"], "received_by": "The milker"}, **made(AT + HOUR))
    send(phone, house, AT + HOUR)
    visit = visit_of(phone)
    assert (visit.signed_by, visit.finished_at) == ("The milker", AT)
    assert VisitEvent.objects.within(house.scope).filter(visit=visit, after="finished").count() == 1


def test_an_earlier_one_of_another_phone_that_comes_late_changes_nothing(house, visit, phone):
    sign_off(phone)
    send(phone, house, AT)
    other = phone_at(visit)
    sign_off(other, "Somebody", AT - HOUR / 2)
    assert outcomes(send(other, house, AT + HOUR)) == ["kept"]
    assert visit_of(phone).signed_by == "The herd manager"


def test_it_does_not_end_before_it_began(house, phone):
    sign_off(phone, at=TUESDAY_TEN - HOUR)
    send(phone, house, AT)
    assert visit_of(phone).finished_at == TUESDAY_TEN


def test_cows_of_the_same_sending_go_in_whatever_their_place(house, phone):
    sign_off(phone)
    phone.write(cow_content(house.cow.pk), **made(AT))
    assert outcomes(send(phone, house, AT)) == ["kept", "kept"]
    assert Trim.objects.within(house.scope).count() == 1


def test_a_sign_off_is_not_taken_back(house, phone):
    phone.undo(sign_off(phone))
    answers = send(phone, house, AT)
    assert outcomes(answers) == ["kept", "refused"]
    assert reasons(answers)[1] == [
        ("content", "A sign-off is not taken back: sign off again with the right words.")
    ]
