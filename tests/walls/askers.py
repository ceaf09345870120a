"""Everybody who may ask: each part at the first business, and those who have none."""

from dataclasses import dataclass, replace
from datetime import timedelta

from django.conf import settings
from django.contrib.auth.models import AnonymousUser
from django.test import Client, RequestFactory
from django.utils import timezone

from farms.models import Farm, FarmAccess
from farms.web.seat_middleware import SeatMiddleware
from tests.factories import make_member, make_user
from tests.walls.furnished import Furnished
from trimops.accounts.actions import Action
from trimops.accounts.models import ApiToken, Membership, User
from trimops.accounts.roles import FarmRight, Role
from trimops.accounts.services.make_token import TokenWish, givable, make_token
from trimops.accounts.web.session_life import BEGAN, HEARD
from trimops.web.seat import Seat

STRANGER = "a stranger"
NOWHERE = "a person without a business"
BARE = "a farm client without rights"
NAMES = (STRANGER, NOWHERE, *(role.value for role in Role), BARE)
BY_TOKEN = (*(role.value for role in Role), BARE)


@dataclass(frozen=True)
class Asker:
    """One who asks, with the seat that the middleware gives them; by a cookie, or by a token."""

    name: str
    user: User | AnonymousUser
    seat: Seat | None = None
    cookie: str = ""
    token: ApiToken | None = None
    text: str = ""

    @property
    def role(self) -> Role | None:
        return self.seat.role if self.seat else None


def let_in(furnished: Furnished) -> dict[str, Asker]:
    """Each asker by name, signed in as a browser is."""
    people = {role.value: furnished.house.memberships[role].user for role in Role}
    people |= {NOWHERE: make_user(), BARE: _bare_client(furnished)}
    return {STRANGER: Asker(STRANGER, AnonymousUser()), **{n: _signed_in(n, u) for n, u in people.items()}}


def by_token(asker: Asker, lacking: Action | None = None) -> Asker:
    """The same person's program, with a token for all that their part allows but `lacking`."""
    assert asker.seat is not None
    scopes = givable(asker.seat.role) - {lacking}
    wish = TokenWish("Walk", scopes, timedelta(days=1), asker.seat.scope.farm_id)
    token, text = make_token(membership=asker.seat.membership, wish=wish, at=timezone.now())
    seat = replace(asker.seat, token_scopes=token.actions)
    return Asker(asker.name, asker.user, seat, token=token, text=text)


def _bare_client(furnished: Furnished) -> User:
    house = furnished.house
    membership: Membership = make_member(house.business, Role.FARM)
    farm: Farm = house.farm
    rights = {right.value: False for right in FarmRight}
    FarmAccess.objects.create(business=house.business, farm=farm, membership=membership, **rights)
    return membership.user


def _signed_in(name: str, user: User) -> Asker:
    client = Client()
    client.force_login(user)
    session, now = client.session, timezone.now().timestamp()
    session[BEGAN] = session[HEARD] = now
    session.save()
    request = RequestFactory().get("/")
    request.user, request.session = user, session
    found = {}
    SeatMiddleware(lambda seated: found.setdefault("seat", seated.seat))(request)
    return Asker(name, user, found["seat"], client.cookies[settings.SESSION_COOKIE_NAME].value)
