from datetime import UTC, datetime, time, timedelta

import pytest

from tests.factories import MONDAY, make_house
from visits.models import HeldHour
from visits.services import drop_old_holds as dropping
from visits.services.drop_old_holds import drop_old_holds

NOW = datetime(2026, 7, 1, 2, tzinfo=UTC)


def held(house, state, days):
    until = NOW - timedelta(days=days)
    hour = datetime.combine(MONDAY, time(10), UTC)
    return HeldHour.objects.create(
        business=house.business, farm=house.farm, reason="routine", asked_by="The farm", due_from=MONDAY,
        due_until=MONDAY, head_count=5, minutes=60, van=house.van, start=hour, first_start=hour, last_start=hour,
        held_at=until - timedelta(hours=1), until=until, by=house.owner, state=state,
    )  # fmt: skip


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("state", "days", "stays"),
    [
        ("expired", 29, True),
        ("expired", 31, False),
        ("let_go", 31, False),
        ("taken", 400, True),
        ("held", 400, True),
    ],
)
def test_hours_held_in_vain_go_after_a_month(state, days, stays):
    house = make_house()
    held(house, state, days)
    assert drop_old_holds(scope=house.scope, at=NOW) == (0 if stays else 1)
    assert HeldHour.objects.within(house.scope).count() == int(stays)


@pytest.mark.django_db
def test_many_go_a_few_at_a_time_and_others_keep_theirs(monkeypatch):
    monkeypatch.setattr(dropping, "AT_ONCE", 2)
    house, other = make_house(), make_house("Elm & Oak")
    for each in [house] * 5 + [other]:
        held(each, "expired", 60)
    assert drop_old_holds(scope=house.scope, at=NOW) == 5
    assert HeldHour.objects.within(other.scope).count() == 1
