from datetime import UTC, datetime

import pytest

from tests.factories import House, make_house
from trimops.api.models import RepeatableCall
from trimops.api.services.answer_once import Call, Told, answer_once
from trimops.api.services.forget_answers import forget_answers

AT = datetime(2026, 7, 1, 10, tzinfo=UTC)


def once(house: House, told: Told) -> tuple[Told, bool]:
    call = Call(house.scope, house.owner, "k", "f" * 64)
    return answer_once(call=call, act=lambda: told, at=AT)


@pytest.mark.django_db
def test_what_was_answered_goes_and_the_call_stays_done():
    house, other = make_house(), make_house("Elm & Oak")
    for each in (house, other):
        once(each, Told(201, {"ETag": '"1"'}, {"name": "Quillmarsh"}))
    assert forget_answers(scope=house.scope) == 1
    assert "Quillmarsh" not in str(list(RepeatableCall.objects.within(house.scope).values()))
    assert once(house, Told(201, {}, {"name": "a second"})) == (Told(201, {"ETag": '"1"'}, None), True)
    assert RepeatableCall.objects.within(other.scope).get().body == '{"name": "Quillmarsh"}'
