"""The secret of a link that signs one person of a farm in."""

from trimops.portal.services.make_link import LinkKind, make_link
from trimops.portal.services.spend_link import owner_of_link


def test_a_link_says_whose_it_is_and_only_as_it_was_made(house):
    for kind in LinkKind:
        secret = make_link(user=house.client, kind=kind)
        assert owner_of_link(secret) == house.client
        bent = ("B" if secret[-2] == "A" else "A").join([secret[:-2], secret[-1]])
        assert owner_of_link(bent) is None


def test_a_new_password_makes_it_worthless(house):
    secret = make_link(user=house.client, kind=LinkKind.TOLD)
    house.client.set_password("another-long-word")
    house.client.save()
    assert owner_of_link(secret) is None
