"""Somebody comes in by a link."""

import time

import pytest

from tests.factories import NOON, make_business, make_member
from tests.many_hands import ManyHands
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import end_membership
from trimops.portal.services.make_link import LinkKind, make_link
from trimops.portal.services.spend_link import LinkSpent, owner_of_link, spend_link

DAY = 24 * 3600


@pytest.fixture
def secret(house):
    return make_link(user=house.client, kind=LinkKind.TOLD)


def test_it_is_good_once(house, secret):
    assert spend_link(secret=secret, at=NOON) == house.client
    with pytest.raises(LinkSpent):
        spend_link(secret=secret, at=NOON)


def test_looking_at_it_does_not_use_it_up(house, secret):
    assert [owner_of_link(secret) for _ in range(3)] == [house.client] * 3


@pytest.mark.parametrize(("kind", "days"), [(LinkKind.ASKED, 1 / 24), (LinkKind.TOLD, 14)])
def test_it_is_good_for_as_long_as_its_kind_says(house, monkeypatch, kind, days):
    made = time.time()
    secret = make_link(user=house.client, kind=kind, mark="here")
    monkeypatch.setattr(time, "time", lambda: made + days * DAY - 60)
    assert owner_of_link(secret, "here") == house.client
    monkeypatch.setattr(time, "time", lambda: made + days * DAY + 60)
    assert owner_of_link(secret, "here") is None


def test_whoever_works_for_a_business_does_not_come_in_by_link(house):
    assert owner_of_link(make_link(user=house.owner, kind=LinkKind.TOLD)) is None
    make_member(make_business("Fell & Beck"), Role.TRIMMER, house.client)
    assert owner_of_link(make_link(user=house.client, kind=LinkKind.TOLD)) is None


def test_who_has_left_does_not_come_in(house, secret):
    end_membership(membership=house.memberships[Role.FARM], at=NOON)
    assert owner_of_link(secret) is None


@pytest.mark.parametrize("bad", ["", "x", "a" * 24, "ä", "a:b:c"])
def test_what_is_no_link_lets_nobody_in(db, bad):
    assert owner_of_link(bad) is None


@pytest.mark.django_db(transaction=True)
def test_of_many_who_use_it_at_the_same_moment_one_comes_in(transactional_db, tmp_path, monkeypatch, house):
    secret = make_link(user=house.client, kind=LinkKind.TOLD)

    def press(_):
        try:
            return spend_link(secret=secret, at=NOON).pk
        except LinkSpent:
            return None

    answers = ManyHands(tmp_path, monkeypatch)(press, range(4))
    assert sorted(answers, key=bool) == [None, None, None, house.client.pk]
