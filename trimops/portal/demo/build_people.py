"""The demo's business, its people and their vans."""

from dataclasses import dataclass
from datetime import datetime, time
from decimal import Decimal
from math import cos, radians

from trimops.accounts.models import Business, Membership, User
from trimops.accounts.roles import Role
from trimops.portal.demo.demo_people import Cast
from visits.models import BusinessFigures, ShiftPattern, Van

KM_PER_DEGREE = 111.2
WORKING_WEEKDAYS = range(5)


@dataclass(frozen=True)
class Crew:
    """The business with its people by role and its vans in order."""

    business: Business
    people: dict[str, User]
    memberships: dict[str, Membership]
    vans: list[Van]

    def driver(self, van: int) -> User:
        return self.vans[van].trimmer


def place_of(cast: Cast, east_km: float, north_km: float) -> tuple[Decimal, Decimal]:
    """Latitude and longitude of a place in the valley; flat enough over forty kilometres."""
    latitude = cast.latitude + north_km / KM_PER_DEGREE
    longitude = cast.longitude + east_km / (KM_PER_DEGREE * cos(radians(cast.latitude)))
    return Decimal(f"{latitude:.6f}"), Decimal(f"{longitude:.6f}")


def build_people(cast: Cast, since: datetime) -> Crew:
    """The business, one sign-in per role, two vans out Monday to Friday from 07:00 to 17:30."""
    business = Business(**cast.business)
    business.full_clean()
    business.save()
    people, memberships = {}, {}
    for person in cast.people:
        user = User.objects.create_user(person.email, person.name, cast.password)
        place = Membership(business=business, user=user, role=Role(person.role), invited_at=since)
        place.joined_at = since
        place.full_clean()
        place.save()
        people[person.role], memberships[person.role] = user, place
    BusinessFigures.objects.bulk_create([BusinessFigures(business=business, planning=cast.planning)])
    return Crew(business, people, memberships, _vans(business, people, cast))


def _vans(business: Business, people: dict[str, User], cast: Cast) -> list[Van]:
    vans = []
    for sketch in cast.vans:
        latitude, longitude = place_of(cast, sketch.east_km, sketch.north_km)
        van = Van(business=business, name=sketch.name, trimmer=people[sketch.driver], base_name=sketch.base)
        van.base_latitude, van.base_longitude = latitude, longitude
        van.cost_per_day, van.cost_per_km = Decimal(20), Decimal("0.45")
        van.full_clean()
        van.save()
        vans.append(van)
    patterns = [_shift(van, weekday) for van in vans for weekday in WORKING_WEEKDAYS]
    ShiftPattern.objects.bulk_create(patterns)
    return vans


def _shift(van: Van, weekday: int) -> ShiftPattern:
    return ShiftPattern(
        business_id=van.business_id,
        van=van,
        weekday=weekday,
        starts=time(7),
        ends=time(17, 30),
        meal_earliest=time(11, 30),
        meal_latest=time(14),
    )
