"""Two invented businesses that share one trimmer, so that every leak has something to show."""

from copy import deepcopy
from dataclasses import dataclass
from datetime import UTC, date, datetime

import pytest
from django.db import transaction

from farms.models import Contact, Cow, CowIdentity, Farm, Payer
from trimops.accounts.models import Business, User
from trimops.kernel.scope import Scope
from trimops.tenancy import lock
from visits.models import Trim, Van, Visit, VisitEvent

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)


@dataclass(frozen=True)
class House:
    """What one business owns: two farms of one payer, a cow and a trim on each, one van."""

    business: Business
    payer: Payer
    farm: Farm
    other_farm: Farm
    cow: Cow
    visit: Visit
    other_visit: Visit
    trim: Trim
    van: Van

    @property
    def scope(self) -> Scope:
        return Scope(self.business.pk)

    @property
    def farm_scope(self) -> Scope:
        return Scope(self.business.pk, self.farm.pk)


@dataclass(frozen=True)
class World:
    mine: House
    theirs: House
    trimmer: User


def make_farm(business, payer, name):
    return Farm.objects.create(business=business, payer=payer, name=name, latitude=1, longitude=1)


def make_visit(farm, van):
    return Visit.objects.create(
        business=farm.business,
        farm=farm,
        van=van,
        reason="routine",
        asked_at=NOON,
        changed_at=NOON,
        due_from=date(2026, 3, 2),
        due_until=date(2026, 3, 9),
        head_count=20,
        expected_minutes=90,
    )


def make_cow(farm, number):
    cow = Cow.objects.create(business=farm.business, farm=farm, number=number)
    CowIdentity.objects.create(business=farm.business, cow=cow, kind="official_tag", value=number)
    return cow


def make_trim(visit, cow, trimmer):
    return Trim.objects.create(
        business=visit.business,
        visit=visit,
        cow=cow,
        kind="functional",
        recorded_at=NOON,
        recorded_by=trimmer,
    )


def make_house(name, trimmer):
    business = Business.objects.create(name=name)
    payer = Payer.objects.create(business=business, name="The Estate")
    farm, other = make_farm(business, payer, "Low Croft"), make_farm(business, payer, "High Croft")
    van = Van.objects.create(
        business=business, name="Van 1", trimmer=trimmer, base_latitude=1, base_longitude=1
    )
    visit, other_visit = make_visit(farm, van), make_visit(other, van)
    cow, other_cow = make_cow(farm, "101"), make_cow(other, "202")
    trim = make_trim(visit, cow, trimmer)
    make_trim(other_visit, other_cow, trimmer)
    for each in (visit, other_visit):
        VisitEvent.objects.create(business=business, visit=each, after="wanted", at=NOON, by=trimmer)
    for each in (farm, other):
        Contact.objects.create(business=business, farm=each, name=f"Ringer of {each.name}", part="owner")
    return House(business, payer, farm, other, cow, visit, other_visit, trim, van)


def make_world():
    trimmer = User.objects.create_user("trimmer@example.invalid", "A Trimmer")
    return World(make_house("Ash & Rye", trimmer), make_house("Fell & Beck", trimmer), trimmer)


@pytest.fixture(scope="module")
def standing_world(django_db_setup, django_db_blocker):
    """Made once for a file and taken back at its end; each test runs in a transaction of its own inside."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_world()
        transaction.set_rollback(True)


@pytest.fixture
def world(standing_world, db):
    """As nobody has touched it yet. A test that commits makes its own."""
    return deepcopy(standing_world)


@pytest.fixture
def trimmer(world):
    return world.trimmer


@pytest.fixture
def no_lock(monkeypatch):
    """The lock taken out, to show that a test which passes with it fails without."""
    monkeypatch.setattr(lock, "_is_watched", lambda query: False)


def pytest_generate_tests(metafunc):
    """A test that asks for `way` runs once for each entry of its file's table WAYS (name -> call on the world)."""
    if "way" in metafunc.fixturenames:
        ways = metafunc.module.WAYS
        metafunc.parametrize("way", list(ways.values()), ids=list(ways))
