"""What a phone sends from the crush is taken in."""

import pytest
from django.db import IntegrityError, OperationalError, connection

from tests.factories import TUESDAY_TEN, in_state, planned
from tests.visits.api.phone import blocked, cow_content, foot
from tests.visits.services.sendings import HOUR, made, outcomes, phone_at, reasons, send
from visits.domain.visit_states import VisitState
from visits.models import Block, CrushWriting, Trim, Visit

AT = TUESDAY_TEN + HOUR


@pytest.fixture
def phone(visit):
    return phone_at(visit)


def state_of(visit):
    return Visit.objects.within(visit.scope).get(pk=visit.pk)


def test_what_is_new_is_kept_and_what_is_known_changes_nothing(house, phone):
    sent = phone.write(cow_content(house.cow.pk, blocked()))
    (answer,) = send(phone, house, AT)
    assert (answer.outcome.value, str(answer.shows), answer.beside) == ("kept", sent["uid"], ())
    assert outcomes(send(phone, house, AT + HOUR, writings=[sent, sent])) == ["known", "known"]
    assert CrushWriting.objects.within(house.scope).get().received_at == AT


def test_a_writing_twice_in_one_sending_is_kept_once(house, phone):
    sent = phone.write(cow_content(house.cow.pk))
    assert outcomes(send(phone, house, AT, writings=[sent, sent])) == ["kept", "known"]


def test_a_bad_one_is_told_and_the_rest_goes_in(house, phone):
    phone.write(cow_content(house.cow.pk, foot("XX")))
    phone.write(cow_content(house.cow.pk, foot("LH")))
    answers = send(phone, house, AT)
    assert outcomes(answers) == ["refused", "kept"]
    assert reasons(answers)[0] == [("content.entry.feet[0].foot", "must be one of LF, RF, LH, RH")]


def test_the_visit_starts_when_the_phone_says_it_was_begun(house):
    phone = phone_at(planned(house.farm, house.van))
    phone.begun = {"at": (AT - HOUR / 2).isoformat(), "checked": True}
    phone.write(cow_content(house.cow.pk))
    assert outcomes(send(phone, house, AT)) == ["kept"]
    visit = state_of(phone.visit)
    assert (visit.state, visit.started_at, visit.start_checked) == ("under_way", AT - HOUR / 2, True)


@pytest.mark.parametrize("begun", [None, {"at": AT.isoformat(), "checked": False}])
def test_without_the_check_before_the_first_cow_nothing_is_taken(house, begun):
    """T14: the check before the first cow is ticked first."""
    phone = phone_at(planned(house.farm, house.van))
    phone.begun = begun
    phone.write(cow_content(house.cow.pk))
    ((fault,),) = reasons(send(phone, house, AT))
    assert fault[1].startswith("Start the visit first")
    assert state_of(phone.visit).state == "planned"


def test_a_visit_called_off_takes_nothing_and_says_why(house):
    phone = phone_at(in_state(VisitState.CALLED_OFF, house.farm, house.van))
    phone.write(cow_content(house.cow.pk))
    assert "snowed in" in reasons(send(phone, house, AT))[0][0][1]


def test_a_visit_that_was_put_off_takes_nothing_and_says_what_to_do(house):
    phone = phone_at(in_state(VisitState.WANTED, house.farm, house.van))
    phone.write(cow_content(house.cow.pk))
    assert "planned again" in reasons(send(phone, house, AT))[0][0][1]


def test_a_fault_of_the_database_leaves_everything_as_it_was(house, phone):
    def give_out(execute, sql, params, many, context):
        if "visits_block" in sql and sql.startswith("INSERT"):
            raise OperationalError("the disk is full")
        return execute(sql, params, many, context)

    phone.write(cow_content(house.cow.pk, blocked()))
    with connection.execute_wrapper(give_out), pytest.raises(OperationalError):
        send(phone, house, AT)
    assert not CrushWriting.objects.within(house.scope).exists()
    assert outcomes(send(phone, house, AT)) == ["kept"]


def test_one_that_the_database_will_not_have_does_not_hold_up_the_others(house, phone):
    """Never seen to happen: what is known to be wrong is refused before. Here it is made to."""

    def will_not_have(execute, sql, params, many, context):
        if sql.startswith("INSERT") and "visits_trimmedfoot" in sql and "RF" in str(params):
            raise IntegrityError("no")
        return execute(sql, params, many, context)

    phone.write(cow_content(house.cow.pk, blocked(), note="fine"))
    other = house.farm.cows.within(house.scope).create(business=house.business, farm=house.farm, number="7")
    bad = phone.write(cow_content(other.pk, foot("RF")))
    with connection.execute_wrapper(will_not_have):
        answers = send(phone, house, AT, writings=[*phone.waiting, bad])
    assert outcomes(answers) == ["kept", "refused", "refused"]
    assert Trim.objects.within(house.scope).get().note == "fine"
    assert Block.objects.within(house.scope).count() == CrushWriting.objects.within(house.scope).count() == 1


def test_the_later_edit_shows_and_each_is_told_what_stands_beside_it(house, visit):
    one, two = phone_at(visit), phone_at(visit)
    early = one.write(cow_content(house.cow.pk, note="early"), **made(AT - HOUR))
    late = two.write(cow_content(house.cow.pk, note="late"), **made(AT))
    (second,) = send(two, house, AT)
    (first,) = send(one, house, AT)
    assert str(first.shows) == str(second.shows) == late["uid"]
    assert [str(uid) for uid in first.beside] == [late["uid"]]
    trim = Trim.objects.within(house.scope).get()
    assert (trim.note, trim.version, str(trim.client_id)) == ("late", 2, late["record"])
    assert early["uid"] != late["uid"]
