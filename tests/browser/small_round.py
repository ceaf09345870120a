"""A small, busy business in the weeks around today: one thing of each kind that a page can show."""

from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from decimal import Decimal

from farms.models import Cow, Farm, FarmAccess, HerdImport
from farms.services.give_farm_rights import give_farm_rights
from farms.services.keep_herd_list import keep_herd_list
from invoicing.models import Invoice
from invoicing.services.issue_invoice import issue_invoice
from tests.factories import (
    House,
    blocked_foot,
    finish,
    let_in,
    make_cow,
    make_farm,
    make_house,
    make_kit,
    make_prices,
    make_wish,
    named,
    put_down,
    trimmed_foot,
)
from trimops.accounts.models import Membership
from trimops.accounts.roles import FarmRight, Role
from trimops.accounts.services.invite_person import Guest, invite_person
from trimops.kernel.clock import at_local, monday_of
from trimops.kernel.scope import Scope
from visits.domain.crush_entry import FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.visit_states import VisitReason
from visits.models import HeldHour, OutBecause, Visit, WeekPlan
from visits.selectors.farm_offers import farm_offers
from visits.selectors.offer_again import AskedPlace
from visits.services.ask_visit import ask_visit
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.hold_offer import OfferToHold, asked_for, hold_offer
from visits.services.note_what_happened import OutWord
from visits.services.plan_visit import plan_visit
from visits.services.replan_week import replan_week
from visits.services.start_visit import start_visit
from visits.services.think_replan import think_replan

FARMS = (
    ("Upper Fold", "54.14", "-2.36", 180),
    ("Thistle Bank", "54.06", "-2.31", 95),
    ("Long Meadow Barns", "54.02", "-2.48", 240),
    ("Ash Hollow", "53.97", "-2.35", 60),
)


# New, changed, faulty, and a heading nobody knows.
HERD_LIST = (
    b"number,status,born,weight\n101,dry,2020-03-01,600\n501,milking,2022-04-01,\n502,milking,2021-13-01,\n"
)


@dataclass(frozen=True)
class Round:
    """The business, its visits by state, and its invoices."""

    house: House
    wanted: Visit
    planned: Visit
    confirmed: Visit
    under_way: Visit
    finished: Visit
    called_off: Visit
    draft: Invoice
    issued: Invoice
    invited: Membership
    herd_list: HerdImport
    replanned: WeekPlan
    thinking: WeekPlan
    held: HeldHour
    held_here: HeldHour
    access: FarmAccess


def make_round() -> Round:
    """All of it, on the days around today."""
    now = datetime.now(UTC).replace(microsecond=0)
    house = make_house()
    _fit_to_bill(house)
    make_prices(house.business, functional="12", corrective="18.50", call_out="35")
    make_kit(house.business)
    farms = _farms(house)
    finished = _finished(house, house.farm, now - timedelta(days=9))
    billed = _draft_of(_finished(house, farms[0], now - timedelta(days=8)))
    guest = Guest("new@example.invalid", "New Hand", Role.TRIMMER)
    under_way = _under_way(house, farms[1], now - timedelta(hours=2))
    return Round(
        house=house,
        wanted=_wanted(house, farms, now),
        planned=_planned(house, house.farm, now, 1),
        confirmed=confirm_visit(visit=_planned(house, farms[3], now, 2), at=now, by=house.trimmer),
        under_way=under_way,
        finished=finished,
        called_off=call_off_visit(
            visit=_asked(house, farms[2], now),
            because="Snow on the lane; they ring again.",
            at=now,
            by=house.office,
        ),
        draft=_draft_of(finished),
        issued=issue_invoice(invoice=billed, at=now, by=house.owner),
        invited=invite_person(business=house.business, guest=guest, at=now, by=house.owner),
        herd_list=keep_herd_list(
            farm=house.farm, file_name="herd.csv", content=HERD_LIST, at=now, by=house.office
        ),
        replanned=_replanned(house, now),
        thinking=_thinking(house, now),
        held=_held(house, farms[0], now),
        held_here=_held(house, house.farm, now),
        access=_may_do_everything(house),
    )


def _may_do_everything(house: House) -> FarmAccess:
    """The farm client has every right at the farm that they see first."""
    access = FarmAccess.objects.within(house.scope).get(farm=house.farm)
    return give_farm_rights(access=access, rights=set(FarmRight))


def _held(house: House, farm: Farm, now: datetime) -> HeldHour:
    """An hour held for a farm that thinks it over."""
    day = now.date()
    wish = make_wish(reason=VisitReason.URGENT, head_count=2, due_from=day, due_until=day + timedelta(days=2))
    best = farm_offers(asked_for(farm, wish), now).fits[0]
    offer = OfferToHold(wish, AskedPlace(best.van.pk, best.first, best.last))
    return hold_offer(farm=farm, offer=offer, at=now, by=house.office)


def _fit_to_bill(house: House) -> None:
    """An invoice needs both parties' addresses and the seller's tax number."""
    business, farm = house.business, house.farm
    business.address, business.vat_number = "1 Rye Yard\nAshby Green", "GB999999973"
    business.bank_details = "Ash & Rye, account 00000000"
    business.save()
    farm.address = "Low Croft\nAshby Green"
    farm.save()


def _farms(house: House) -> list[Farm]:
    farms = []
    for name, north, east, herd in FARMS:
        place = {
            "latitude": Decimal(north),
            "longitude": Decimal(east),
            "herd_size": herd,
            "address": f"{name}\nAshby Green",
        }
        farms.append(make_farm(house.business, name, by=house.owner, **place))
    farms[2].access_notes = "Second gate after the bridge; mind the dog."
    farms[2].save()
    for farm in farms:
        for number in range(201, 206):
            make_cow(farm, str(number))
    let_in(house.memberships[Role.FARM], farms[0])
    return farms


def _cows_of(farm: Farm) -> list[Cow]:
    return list(Cow.objects.within(Scope(farm.business_id)).filter(farm=farm).order_by("number"))


def _asked(house: House, farm: Farm, now: datetime, **changes: object) -> Visit:
    today = now.date()
    words = {"due_from": today, "due_until": today + timedelta(days=9), **changes}
    return ask_visit(farm=farm, wish=make_wish(**words), at=now, by=house.office)


def _wanted(house: House, farms: list[Farm], now: datetime) -> Visit:
    """Next week has enough to plan: routine, urgent and re-check."""
    monday = monday_of(now.date()) + timedelta(days=7)
    last = {"due_from": monday, "due_until": monday + timedelta(days=4)}
    for farm, cows in zip(farms[1:], (14, 22, 8), strict=True):
        _asked(house, farm, now, head_count=cows, **last)
    lame = {"corrective_count": 1, "mobility_scale": MobilityScale.UK, "mobility_score": 2}
    return _asked(house, farms[0], now, reason=VisitReason.URGENT, head_count=2, **last, **lame)


def _planned(house: House, farm: Farm, now: datetime, days: int) -> Visit:
    visit = _asked(house, farm, now, due_until=now.date() + timedelta(days=12))
    start = at_local(now.date() + timedelta(days=days), time(9, 30), house.business.zone)
    return plan_visit(visit=visit, van=house.van, start=start, at=now, by=house.office)


def _under_way(house: House, farm: Farm, at: datetime) -> Visit:
    cows = {cow.number: cow for cow in _cows_of(farm)}
    wish = [named(cows["201"], "Walks badly, left hind"), named(cows["202"], "Long claws")]
    visit = _asked(house, farm, at, cows=tuple(wish))
    visit = plan_visit(visit=visit, van=house.van, start=at, at=at, by=house.office)
    visit = start_visit(visit=visit, checked=True, at=at, by=house.trimmer)
    put_down(visit, cows["201"], blocked_foot(), mobility_scale=MobilityScale.UK, mobility_score=2)
    return visit


def _finished(house: House, farm: Farm, at: datetime) -> Visit:
    cows = [*_cows_of(farm), make_cow(farm, "318"), make_cow(farm, "44")]
    visit = _asked(house, farm, at - timedelta(days=3), due_until=at.date())
    visit = plan_visit(visit=visit, van=house.van, start=at, at=at - timedelta(days=2), by=house.office)
    visit = start_visit(visit=visit, checked=True, at=at, by=house.trimmer)
    skin = FindingEntry(LesionCode.DD, Claw.SKIN, zone=10, severity=2, dd_stage=DDStage.M2)
    put_down(
        visit,
        cows[0],
        blocked_foot(),
        trimmed_foot(Foot.RIGHT_HIND),
        mobility_scale=MobilityScale.UK,
        mobility_score=2,
    )
    put_down(visit, cows[1], trimmed_foot(Foot.RIGHT_HIND, findings=(skin,)), note="Quiet cow")
    for cow in cows[2:]:
        put_down(visit, cow, trimmed_foot(Foot.LEFT_HIND), trimmed_foot(Foot.RIGHT_HIND))
    return finish(visit, house.trimmer)


def _thinking(house: House, now: datetime) -> WeekPlan:
    """A plan of a far week that is being thought about, and never comes to an end."""
    return WeekPlan.objects.create(
        business=house.business,
        monday=monday_of(now.date()) + timedelta(days=70),
        problem={},
        asked_at=now,
        asked_by=house.owner,
        percent=40,
        progress_text="Best so far costs 4,685.96",
        cost_history=[[0.1, 570400.0], [1.2, 479607.0], [4.0, 468596.0]],
    )


def _replanned(house: House, now: datetime) -> WeekPlan:
    """The crush is broken tomorrow; the visits of that day have to go elsewhere."""
    day = (now + timedelta(days=1)).date()
    since, until = (at_local(day + timedelta(days=n), time(0), house.business.zone) for n in (0, 2))
    out = OutWord(house.van, OutBecause.CRUSH, since, until)
    plan = replan_week(business=house.business, monday=monday_of(day), happening=out, at=now, by=house.owner)
    return think_replan(week_plan=plan, limits=SolveLimits(iterations=10), at=now)


def _draft_of(visit: Visit) -> Invoice:
    return Invoice.objects.within(Scope(visit.business_id)).get(visit=visit)
