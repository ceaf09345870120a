"""Businesses with a visit today, and who works, looks and asks there: plain facts that a client needs of them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from django.conf import settings
from django.test import Client

from farms.models import Cow, FarmAccess
from tests.factories import (
    blocked_foot,
    confirmed,
    finish,
    make_farm,
    make_house,
    make_kit,
    make_prices,
    put_down,
    trimmed_foot,
    under_way,
    wanted,
)
from tests.straight_tables import make_tables
from trimops.accounts.actions import MAY, Action
from trimops.accounts.models import User
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, make_token
from visits.services.make_calendar_address import FeedWish, make_calendar_address

COWS, SEEN_BEFORE = 40, 4
READS = frozenset(
    action
    for action in Action
    if action.value.endswith((":see", ":keep")) and Role.OWNER in MAY[action].roles
)


@dataclass(frozen=True)
class LoadHouse:
    """Keys and secrets of one business; `cookies` by part, `told` what its day has brought so far."""

    business: int
    farm: int
    cows: tuple[int, ...]
    old: int
    today: int
    cookies: Mapping[Role, str]
    token: str
    feed: str
    told: dict[str, object] = field(default_factory=dict)


def make_load_tables() -> None:
    # because: nobody signs in by a password here, and a slow hash of four a business would be most of the building
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
    make_tables()


def build_all(count: int, now: datetime, say: Callable[[str], None]) -> list[LoadHouse]:
    houses = []
    for number in range(count):
        houses.append(build_house(number, now))
        if number % 50 == 49:
            say(f"{number + 1} businesses are built")
    return houses


def build_house(number: int, now: datetime) -> LoadHouse:
    """Three farms: one seen six weeks ago, where the van goes today; forty cows to trim there."""
    house = make_house(f"Load Trimming {number}")
    make_prices(house.business)
    make_kit(house.business)
    FarmAccess.objects.within(house.scope).update(
        **dict.fromkeys(("sees_money", "reads_reports", "edits_draft", "asks_visits"), True)
    )
    for name in ("Mill Bank", "Top End"):
        wanted(make_farm(house.business, name, by=house.owner), **_due(now))
    cows = Cow.objects.bulk_create(
        Cow(business=house.business, farm=house.farm, number=str(200 + n)) for n in range(COWS)
    )
    start = now.replace(second=0, microsecond=0)
    old = under_way(house.farm, house.van, start - timedelta(days=42), **_due(start - timedelta(days=42)))
    for cow, foot in zip(cows[:SEEN_BEFORE], (blocked_foot(), *[trimmed_foot()] * 3), strict=True):
        put_down(old, cow, foot)
    finish(old, house.trimmer)
    today = confirmed(house.farm, house.van, start + timedelta(minutes=5), **_due(now))
    member = house.memberships[Role.OWNER]
    wish = TokenWish("Farm office program", READS, timedelta(days=2))
    _, token = make_token(membership=member, wish=wish, at=now)
    feed = make_calendar_address(business=house.business, wish=FeedWish("Phone"), at=now, by=house.owner)
    people = {role: each.user for role, each in house.memberships.items()}
    return LoadHouse(
        business=house.business.pk,
        farm=house.farm.pk,
        cows=tuple(cow.pk for cow in cows),
        old=old.pk,
        today=today.pk,
        cookies={role: _signed_in(user) for role, user in people.items()},
        token=token,
        feed=feed.secret,
    )


def _due(start: datetime) -> dict[str, object]:
    return {"due_from": start.date(), "due_until": start.date() + timedelta(days=11)}


def _signed_in(user: User) -> str:
    client = Client()
    client.force_login(user)
    return str(client.cookies[settings.SESSION_COOKIE_NAME].value)
