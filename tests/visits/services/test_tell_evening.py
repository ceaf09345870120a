"""Tomorrow's round and tonight's list, to those who want them."""

from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import TUESDAY_TEN, confirmed, make_farm, make_house, make_member, make_van, planned
from trimops.accounts.roles import Role
from trimops.outbox.models import Outgoing
from visits.services.tell_evening import tell_evening

EVENING = datetime(2026, 3, 2, 19, tzinfo=UTC)


@pytest.fixture
def house(db):
    house = make_house()
    wants(house, Role.TRIMMER)
    return house


def wants(house, role, *, does=True):
    member = house.memberships[role]
    member.evening_mail = does
    member.save()


def mails(house):
    return list(Outgoing.objects.within(house.scope).order_by("pk"))


def test_the_round_is_told_by_the_hour_with_cows_and_address(house):
    high = make_farm(house.business, "High Croft", by=house.owner, access_notes="Second gate")
    planned(high, house.van, TUESDAY_TEN + timedelta(hours=3), head_count=5)
    confirmed(house.farm, house.van)
    (mail,) = tell_evening(business=house.business, at=EVENING)
    assert (mail.address, mail.subject) == (house.trimmer.email, "Tue 3 Mar, Van 1: 2 farms, 17 cows")
    lines = mail.body.splitlines()
    assert lines[1:3] == ["10:00  Low Croft: 12 cows", "       Down the track, Nowhere"]
    assert lines.index("13:00  High Croft: 5 cows") > 2
    assert "       Way in: Second gate" in lines
    assert any(line.startswith("- Somebody knows where you are") for line in lines)


def test_told_twice_it_is_one_mail_and_the_next_evening_another(house):
    confirmed(house.farm, house.van)
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=1))
    tell_evening(business=house.business, at=EVENING)
    assert tell_evening(business=house.business, at=EVENING + timedelta(minutes=10)) == []
    tell_evening(business=house.business, at=EVENING + timedelta(days=1))
    assert [mail.subject[:9] for mail in mails(house)] == ["Tue 3 Mar", "Wed 4 Mar"]


def test_who_does_not_want_it_or_left_gets_none(house):
    confirmed(house.farm, house.van)
    wants(house, Role.TRIMMER, does=False)
    assert tell_evening(business=house.business, at=EVENING) == []
    wants(house, Role.TRIMMER)
    member = house.memberships[Role.TRIMMER]
    member.ended_at = EVENING
    member.save()
    assert tell_evening(business=house.business, at=EVENING) == []


def test_each_van_is_told_its_own_round(house):
    other = make_member(house.business, Role.TRIMMER)
    other.evening_mail = True
    other.save()
    second = make_van(house.business, other.user, "Van 2")
    confirmed(house.farm, house.van)
    planned(make_farm(house.business, "High Croft", by=house.owner), second)
    first, then = tell_evening(business=house.business, at=EVENING)
    assert ("Low Croft" in first.body, "High Croft" in first.body) == (True, False)
    assert (then.address, "Low Croft" in then.body) == (other.user.email, False)


def test_with_no_round_and_nothing_to_do_nobody_is_bothered(house):
    assert tell_evening(business=house.business, at=EVENING) == []


def test_the_morning_after_noon_it_is_of_no_use(house):
    confirmed(house.farm, house.van)
    (mail,) = tell_evening(business=house.business, at=EVENING)
    assert mail.worthless_after == datetime(2026, 3, 3, 12, tzinfo=UTC)


def test_another_business_is_told_nothing(house):
    confirmed(house.farm, house.van)
    other = make_house("Elm & Oak")
    wants(other, Role.TRIMMER)
    assert tell_evening(business=other.business, at=EVENING) == []
