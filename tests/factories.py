"""Invented businesses to test with: plain functions that go through the services wherever there is one.

What stands in every house (people, milkings, shifts, prices) is written as rows at once, for most tests begin with it;
`tests/test_factories.py` holds those rows against what the services would have written.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from io import BytesIO
from itertools import count
from uuid import uuid4

from PIL import Image

from farms.domain.identity_kind import IdentityKind
from farms.models import Cow, Farm, FarmAccess, HygieneChange, Milking
from farms.services.save_cow import save_cow
from farms.services.save_farm import save_farm
from invoicing.domain.pricing import PriceItem
from invoicing.models import Price, PriceList, TaxRate
from trimops.accounts.models import Business, Membership, User
from trimops.accounts.roles import Role
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.paper.picture_anew import picture_anew
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.kit.stock_kinds import ConsumableKind, MovementKind, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.domain.lesions import LesionCode
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import (
    Blade,
    Consumable,
    ShiftPattern,
    StockLot,
    StockMovement,
    Trim,
    TrimPhoto,
    UseRule,
    Van,
    Visit,
)
from visits.services.ask_visit import CowWish, VisitWish, ask_visit
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.finish_visit import SignOff, finish_visit
from visits.services.kit.stock_place import place_of_van, store_of
from visits.services.plan_visit import plan_visit
from visits.services.record_trim import CrushRecord, record_trim
from visits.services.save_photo import SentPhoto, save_photo
from visits.services.start_visit import start_visit


def _grey_jpeg() -> bytes:
    """Not much of a foot: a real picture of sixteen grey dots, which drawn anew is the same bytes."""
    out = BytesIO()
    Image.new("RGB", (16, 16), (128, 128, 128)).save(out, "JPEG")
    return picture_anew(out.getvalue())


MONDAY = date(2026, 3, 2)
NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
TUESDAY_TEN = datetime(2026, 3, 3, 10, tzinfo=UTC)
JPEG = _grey_jpeg()
PASSWORD = "a-long-word-for-tests"
PLACE: dict[str, object] = {
    "latitude": Decimal("54.1"),
    "longitude": Decimal("-2.3"),
    "herd_size": 120,
    "address": "Down the track\nNowhere",
}

_numbers = count(1)


@dataclass(frozen=True)
class House:
    """One business with a person of each role, a farm, a cow and a van."""

    business: Business
    owner: User
    trimmer: User
    office: User
    client: User
    memberships: dict[Role, Membership]
    farm: Farm
    cow: Cow
    van: Van

    @property
    def scope(self) -> Scope:
        return Scope(self.business.pk)


def make_house(name: str = "Ash & Rye Foot Trimming") -> House:
    """The whole of a small business; call it again with another name for one on the far side of the wall."""
    business = make_business(name)
    members = _one_of_each_role(business)
    people = {role: member.user for role, member in members.items()}
    farm = _first_farm(business, people[Role.OWNER])
    cow = Cow.objects.create(business=business, farm=farm, number="101")
    let_in(members[Role.FARM], farm)
    van = make_van(business, people[Role.TRIMMER])
    return House(
        business=business,
        owner=people[Role.OWNER],
        trimmer=people[Role.TRIMMER],
        office=people[Role.OFFICE],
        client=people[Role.FARM],
        memberships=members,
        farm=farm,
        cow=cow,
        van=van,
    )


def _one_of_each_role(business: Business) -> dict[Role, Membership]:
    people = User.objects.bulk_create(_person(_called(role, business)) for role in Role)
    members = Membership.objects.bulk_create(
        _member(business, role, user) for role, user in zip(Role, people, strict=True)
    )
    return dict(zip(Role, members, strict=True))


def make_business(name: str = "Ash & Rye Foot Trimming", **fields: object) -> Business:
    paper = {"address": "1 Made-up Lane\nNowhere", "vat_number": "GB123456789", **fields}
    business = Business(name=name, **paper)
    # because: to know a zone's name all files of zones are read, and each test would read them again
    business.clean_fields(exclude=set() if "timezone" in fields else {"timezone"})
    business.save()
    return business


def make_user(name: str = "A Person", *, password: str | None = PASSWORD) -> User:
    """A person with an address of their own."""
    user = _person(name, password)
    user.save()
    return user


def _person(name: str, password: str | None = PASSWORD) -> User:
    user = User(email=f"person-{next(_numbers)}@example.invalid", name=name)
    user.set_password(password)
    return user


def make_member(business: Business, role: Role, user: User | None = None) -> Membership:
    """A person who has been in the business for a while."""
    member = _member(business, role, user or make_user(_called(role, business)))
    member.save()
    return member


def _called(role: Role, business: Business) -> str:
    return f"{role.label} of {business.name}"[:120]


def _member(business: Business, role: Role, user: User) -> Membership:
    return Membership(business=business, user=user, role=role, invited_at=NOON, joined_at=NOON)


def let_in(membership: Membership, farm: Farm) -> FarmAccess:
    """Open a farm to a farm client."""
    return FarmAccess.objects.create(business=farm.business, membership=membership, farm=farm)


def make_farm(business: Business, name: str, *, by: User, **fields: object) -> Farm:
    """A farm that milks at six and four."""
    farm = save_farm(farm=Farm(business=business, name=name, **PLACE | fields), at=NOON, by=by)
    return _milks_at_six_and_four(farm)


def _milks_at_six_and_four(farm: Farm) -> Farm:
    Milking.objects.bulk_create(
        Milking(business_id=farm.business_id, farm=farm, weekday=day, starts=starts, minutes=120)
        for starts in (time(6), time(16))
        for day in range(7)
    )
    return farm


def _first_farm(business: Business, by: User) -> Farm:
    """As `save_farm` leaves a new one."""
    farm = Farm(business=business, name="Low Croft", **PLACE)
    farm.hygiene_since, farm.shown_since = local_day(NOON, farm.business.zone), NOON
    farm.save()
    HygieneChange.objects.create(
        business=farm.business,
        farm=farm,
        level=farm.hygiene_level,
        reason="as first told",
        since=farm.hygiene_since,
        changed_at=NOON,
        changed_by=by,
    )
    return _milks_at_six_and_four(farm)


def make_cow(
    farm: Farm, number: str, identities: dict[IdentityKind, str] | None = None, **fields: object
) -> Cow:
    cow = Cow(business=farm.business, farm=farm, number=number, **fields)
    return save_cow(cow=cow, identities=identities)


def make_van(
    business: Business, trimmer: User, name: str = "Van 1", weekdays: Sequence[int] = range(5)
) -> Van:
    """A van that goes out from eight to five on these weekdays."""
    van = Van(business=business, name=name, trimmer=trimmer)
    van.base_latitude, van.base_longitude = Decimal("54.0"), Decimal("-2.4")
    van.save()
    ShiftPattern.objects.bulk_create(
        ShiftPattern(business=business, van=van, weekday=day, starts=time(8), ends=time(17))
        for day in weekdays
    )
    return van


def make_prices(business: Business, percent: str = "20", **own: str) -> PriceList:
    """Two tax rates from the start of the year and a price for everything; `own` changes single prices."""
    start = date(2026, 1, 1)
    TaxRate.objects.create(
        business=business, code="usual", category="S", percent=Decimal(percent), valid_from=start
    )
    TaxRate.objects.create(business=business, code="low", category="S", percent=Decimal(5), valid_from=start)
    price_list = PriceList.objects.create(business=business, name="From January", valid_from=start)
    Price.objects.bulk_create(
        Price(
            business=business,
            price_list=price_list,
            item=item,
            unit_price=Decimal(own.get(item.value, "10")),
            tax_code="low" if item is PriceItem.DRESSING else "usual",
        )
        for item in PriceItem
    )
    return price_list


def make_kit(business: Business) -> dict[str, Consumable]:
    """Wooden blocks, the glue that goes with each block, wraps."""
    wood, block = Recipe(UsePer.BLOCK, Decimal(1), BlockKind.WOOD), Recipe(UsePer.BLOCK, Decimal(25))
    wrap = Recipe(UsePer.WRAP, Decimal(1))
    return {
        "wood": make_consumable(business, "Wooden block", ConsumableKind.BLOCK, wood),
        "glue": make_consumable(business, "Glue", ConsumableKind.GLUE, block, unit="ml"),
        "wrap": make_consumable(business, "Wrap", ConsumableKind.WRAP, wrap),
    }


def make_consumable(
    business: Business, name: str, kind: ConsumableKind, *recipe: Recipe, unit: str = "each", **fields: object
) -> Consumable:
    """A consumable with the lines of its recipe."""
    item = Consumable.objects.create(business=business, name=name, kind=kind, unit=unit, **fields)
    for line in recipe:
        UseRule.objects.create(
            business=business,
            consumable=item,
            per=line.per,
            quantity=line.quantity,
            block_kind=line.block_kind or "",
        )
    return item


def stock_up(item: Consumable, quantity: int | str, *, at: datetime, van: Van | None = None) -> StockMovement:
    """So much of it was bought into the van, or into the store, at that moment."""
    place = place_of_van(van) if van else store_of(item.scope)
    lot = StockLot.objects.create(business=item.business, consumable=item, bought_on=at.date())
    return StockMovement.objects.create(
        business=item.business,
        consumable=item,
        place=place,
        kind=MovementKind.BOUGHT,
        quantity=Decimal(quantity),
        at=at,
        lot=lot,
        noted_at=at,
    )


def make_blade(van: Van, name: str, **fields: object) -> Blade:
    """A hoof knife of the right hand, bought on the day before Tuesday, which nobody has had in hand yet."""
    since = TUESDAY_TEN - timedelta(days=1)
    words = {"bought_on": since.date(), "state_since": since, **fields}
    return Blade.objects.create(business_id=van.business_id, van=van, name=name, **words)


def make_wish(**changes: object) -> VisitWish:
    words: dict[str, object] = {
        "reason": VisitReason.ROUTINE,
        "asked_by": "The herd manager",
        "due_from": MONDAY,
        "due_until": MONDAY + timedelta(days=11),
        "head_count": 12,
        **changes,
    }
    return VisitWish(**words)


def wanted(farm: Farm, by: User | None = None, **changes: object) -> Visit:
    return ask_visit(farm=farm, wish=make_wish(**changes), at=NOON, by=by)


def planned(farm: Farm, van: Van, start: datetime = TUESDAY_TEN, **changes: object) -> Visit:
    return plan_visit(visit=wanted(farm, **changes), van=van, start=start, at=NOON, by=van.trimmer)


def confirmed(farm: Farm, van: Van, start: datetime = TUESDAY_TEN, **changes: object) -> Visit:
    return confirm_visit(visit=planned(farm, van, start, **changes), at=NOON, by=van.trimmer)


def under_way(farm: Farm, van: Van, start: datetime = TUESDAY_TEN, **changes: object) -> Visit:
    visit = planned(farm, van, start, **changes)
    return start_visit(visit=visit, checked=True, at=start, by=van.trimmer)


def finish(visit: Visit, by: User, at: datetime | None = None) -> Visit:
    at = at or (visit.started_at or NOON) + timedelta(hours=3)
    return finish_visit(visit=visit, sign_off=SignOff("The herd manager", True, "Hosed"), at=at, by=by)


def finished(farm: Farm, van: Van, start: datetime = TUESDAY_TEN, **changes: object) -> Visit:
    return finish(under_way(farm, van, start, **changes), van.trimmer)


def in_state(state: VisitState, farm: Farm, van: Van, start: datetime = TUESDAY_TEN) -> Visit:
    """A visit that has come as far as `state`."""
    makers = {
        VisitState.PLANNED: planned,
        VisitState.CONFIRMED: confirmed,
        VisitState.UNDER_WAY: under_way,
        VisitState.FINISHED: finished,
    }
    if state in makers:
        return makers[state](farm, van, start)
    visit = wanted(farm)
    if state is VisitState.CALLED_OFF:
        return call_off_visit(visit=visit, because="The farm is snowed in.", at=NOON, by=van.trimmer)
    return visit


def named(cow: Cow, why: str = "Walks badly") -> CowWish:
    return CowWish(cow, why)


def trimmed_foot(foot: Foot = Foot.LEFT_HIND, *extra: ActionEntry, **fields: object) -> FootEntry:
    """A foot cut to length and levelled, and what else is given."""
    cut = (
        ActionEntry(ActionKind.LENGTH, Claw.MEDIAL),
        ActionEntry(ActionKind.BALANCE, Claw.LATERAL),
    )
    return FootEntry(foot=foot, actions=(*cut, *extra), **fields)


def blocked_foot(
    foot: Foot = Foot.LEFT_HIND, kind: BlockKind = BlockKind.WOOD, **fields: object
) -> FootEntry:
    """A sole ulcer on the outer claw, the block on the inner one beside it."""
    ulcer = FindingEntry(LesionCode.SU, Claw.LATERAL, zone=4, severity=2)
    block = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, kind)
    return trimmed_foot(foot, block, findings=(ulcer,), **fields)


def put_down(visit: Visit, cow: Cow, *feet: FootEntry, at: datetime | None = None, **entry: object) -> Trim:
    """Keep a cow on a visit that is under way."""
    at = at or (visit.started_at or NOON) + timedelta(minutes=20)
    record = CrushRecord(cow, CowEntry(feet=feet, **entry), uuid4(), at)
    return record_trim(visit=visit, record=record, by=visit.van.trimmer)


def photo_of(trim: Trim, picture: bytes = JPEG) -> TrimPhoto:
    """A picture of the left hind foot of a cow that was put down."""
    photo = SentPhoto(uuid4(), trim.client_id, Foot.LEFT_HIND, trim.recorded_at, picture)
    return save_photo(visit=trim.visit, photo=photo, at=trim.recorded_at, by=trim.recorded_by)[0]
