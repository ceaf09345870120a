"""What is to go says so with each answer, on a made-up address."""

from datetime import UTC, datetime

import pytest
from django.test import RequestFactory
from rest_framework import serializers

from tests.factories import make_house
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.api.kinds import ToldApi
from trimops.api.op import Deprecated, Op
from trimops.web.seat import Seat

GOING = Deprecated(datetime(2026, 3, 2, tzinfo=UTC), datetime(2027, 3, 2, tzinfo=UTC))


class MadeUpShown(serializers.Serializer):
    word = serializers.CharField()


class MadeUpApi(ToldApi):
    """Made up."""

    ops = {"get": Op(Action.SEE_FARMS, "read_made_up", "Made up", shows=MadeUpShown, deprecated=GOING)}

    def told(self):
        return {"word": "still here"}


@pytest.mark.django_db
@pytest.mark.parametrize(("role", "status"), [(Role.OWNER, 200), (None, 401)])
def test_it_says_since_when_and_until_when(role, status):
    house = make_house()
    request = RequestFactory().get("/api/v1/made-up/")
    request.token, request.seat = None, None
    request.user, request._dont_enforce_csrf_checks = house.owner, True
    if role:
        request.seat = Seat(house.owner, house.memberships[role], house.business, house.scope)
    else:
        request.user = type("Nobody", (), {"is_authenticated": False, "is_active": False, "pk": None})()
    answer = MadeUpApi.as_view()(request)
    assert answer.status_code == status
    assert answer["Deprecation"] == "@1772409600"
    assert answer["Sunset"] == "Tue, 02 Mar 2027 00:00:00 GMT"
