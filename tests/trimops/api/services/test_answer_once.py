"""A repeated call does nothing twice."""

from datetime import timedelta

import pytest
from django.db import IntegrityError

from tests.factories import NOON, make_house
from trimops.api.models import RepeatableCall
from trimops.api.services.answer_once import Call, KeyOfAnother, Told, answer_once
from trimops.api.services.drop_old_calls import KEPT, drop_old_calls


@pytest.fixture
def house(db):
    return make_house()


def call_of(house, key="k", fingerprint="f", user=None):
    return Call(house.scope, user or house.owner, key, fingerprint)


def counted(done):
    def act():
        done.append(1)
        return Told(201, {"ETag": '"a"'}, {"id": len(done)})

    return act


def test_the_second_call_has_the_first_answer_and_does_nothing(house):
    done = []
    first = answer_once(call=call_of(house), act=counted(done), at=NOON)
    again = answer_once(call=call_of(house), act=counted(done), at=NOON)
    assert first == (Told(201, {"ETag": '"a"'}, {"id": 1}), False)
    assert again == (first[0], True)
    assert len(done) == 1


def test_a_key_is_good_for_one_thing(house):
    answer_once(call=call_of(house), act=counted([]), at=NOON)
    with pytest.raises(KeyOfAnother):
        answer_once(call=call_of(house, fingerprint="other"), act=counted([]), at=NOON)


def test_keys_of_other_people_and_businesses_are_others(house):
    done, other = [], make_house("Fell & Beck")
    for each in (call_of(house), call_of(house, user=house.office), call_of(other)):
        answer_once(call=each, act=counted(done), at=NOON)
    assert len(done) == 3


def test_what_fails_is_not_kept(house):
    def fail():
        raise ValueError("no")

    with pytest.raises(ValueError, match="no"):
        answer_once(call=call_of(house), act=fail, at=NOON)
    assert not RepeatableCall.objects.within(house.scope).exists()


def test_a_breach_of_another_rule_is_not_taken_for_a_repeat(house):
    def breach():
        raise IntegrityError("something else")

    with pytest.raises(IntegrityError, match="something else"):
        answer_once(call=call_of(house), act=breach, at=NOON)


def test_answers_are_kept_for_a_week(house):
    answer_once(call=call_of(house), act=counted([]), at=NOON)
    assert drop_old_calls(scope=house.scope, at=NOON + KEPT) == 0
    assert drop_old_calls(scope=house.scope, at=NOON + KEPT + timedelta(seconds=1)) == 1
