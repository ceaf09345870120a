"""A program's token, and somebody who was asked in and did not come yet."""

from datetime import timedelta

from tests.factories import NOON, House
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invite_person
from trimops.accounts.services.make_token import TokenWish, make_token


def identity_of(house: House) -> dict[str, object]:
    """Keys of the rows by the names that the routes use."""
    wish = TokenWish("Farm office", {Action.SEE_FARMS, Action.SEE_VISITS}, timedelta(days=90))
    token, _ = make_token(membership=house.memberships[Role.OWNER], wish=wish, at=NOON)
    guest = Guest(f"asked-in-{house.business.pk}@example.invalid", "A Guest", Role.OFFICE)
    invited = invite_person(business=house.business, guest=guest, at=NOON, by=house.owner)
    return {"api_token": token.pk, "invited": invited.pk}
