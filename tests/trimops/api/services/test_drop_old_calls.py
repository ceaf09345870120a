"""What is put away is one business's own."""

from datetime import timedelta

import pytest

from tests.factories import NOON, make_house
from trimops.api.models import RepeatableCall
from trimops.api.services.answer_once import Call, Told, answer_once
from trimops.api.services.drop_old_calls import KEPT, drop_old_calls


@pytest.mark.django_db
def test_old_answers_of_another_business_stay():
    mine, theirs = make_house(), make_house("Fell & Beck")
    for house in (mine, theirs):
        call = Call(house.scope, house.owner, "k", "f")
        answer_once(call=call, act=lambda: Told(200, {}, {}), at=NOON)
    assert drop_old_calls(scope=mine.scope, at=NOON + KEPT + timedelta(days=1)) == 1
    assert RepeatableCall.objects.within(theirs.scope).count() == 1
