"""The secret of a link that signs one person of a farm in."""

import pytest

from trimops.portal.services.make_link import LinkKind, make_link
from trimops.portal.services.spend_link import owner_of_link


def test_a_link_says_whose_it_is_and_only_as_it_was_made(house):
    for kind in LinkKind:
        secret = make_link(user=house.client, kind=kind, mark="here")
        assert owner_of_link(secret, "here") == house.client
        bent = ("B" if secret[-2] == "A" else "A").join([secret[:-2], secret[-1]])
        assert owner_of_link(bent, "here") is None


def test_one_that_was_asked_for_is_good_where_it_was_asked_for_and_one_in_a_message_anywhere(house):
    asked = make_link(user=house.client, kind=LinkKind.ASKED, mark="here")
    told = make_link(user=house.client, kind=LinkKind.TOLD)
    assert [owner_of_link(asked, mark) for mark in ("here", "there", "")] == [house.client, None, None]
    assert [owner_of_link(told, mark) for mark in ("here", "there", "")] == [house.client] * 3
    with pytest.raises(ValueError, match="browser"):
        make_link(user=house.client, kind=LinkKind.ASKED)


def test_a_new_password_makes_it_worthless(house):
    secret = make_link(user=house.client, kind=LinkKind.TOLD)
    house.client.set_password("another-long-word")
    house.client.save()
    assert owner_of_link(secret) is None
