"""A business with one row of everything that an address can name."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from pathlib import Path

from farms.models import Contact, Cow, Farm, FarmAccess, Payer
from farms.services.ask_erasure import ask_erasure
from farms.services.give_farm_rights import give_farm_rights
from farms.services.give_vet_pass import VetWord, give_vet_pass
from farms.services.keep_herd_list import keep_herd_list
from invoicing.domain.discount import Discount
from invoicing.models import (
    Agreement,
    Invoice,
    MileageRate,
    MoneyRules,
    PriceList,
    ReferenceRate,
    Reminder,
    TaxRate,
)
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.keep_day_journeys import keep_day_journeys
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.open_draft import Hand
from invoicing.services.send_invoice import send_invoice
from invoicing.services.set_whole_amount import WholeChange, set_whole_amount
from tests.factories import (
    MONDAY,
    NOON,
    TUESDAY_TEN,
    House,
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    make_house,
    make_prices,
    photo_of,
    planned,
    put_down,
    under_way,
    wanted,
)
from tests.trimops.errands.errand_hands import written
from tests.visits.services.offers import hold, offers
from tests.walls.furnished_identity import identity_of
from tests.walls.furnished_kit import kit_of
from tests.walls.furnished_outgoing import outgoing_of
from tests.walls.furnished_outside import outside_of
from tests.walls.furnished_payments import payments_of
from tests.walls.furnished_watch import watch_of
from tests.walls.furnished_work import work_of
from trimops.accounts.roles import FarmRight
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import OutBecause, VanOut, Visit, WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.issue_letter import issue_letter
from visits.services.issue_report import issue_first_report
from visits.services.make_calendar_address import FeedWish, make_calendar_address
from visits.services.note_what_happened import OutWord
from visits.services.replan_week import replan_week
from visits.services.strike_cow import strike_cow
from visits.services.think_replan import think_replan
from visits.services.think_week_plan import think_week_plan

LIST = b"number,official tag\n101,UK123450600001\n900,UK123450700002\n"
PICTURE = (Path(__file__).parents[2] / "visits/static/visits/crush/icons/crush-192.png").read_bytes()
FOR_THE_VET = VetWord("A. Vet", "", ("shows_letters",), 30)
SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)


@dataclass(frozen=True)
class Furnished:
    """A house, and the keys of its rows by what they are; `other` holds those of its second farm."""

    house: House
    keys: dict[str, object]
    other: dict[str, object]
    secret: str


def furnish(name: str) -> Furnished:
    """Everything of a business, on two farms; farm clients are let in to the first alone."""
    house = make_house(name)
    make_prices(house.business)
    keys = _rows_of(house, house.farm, house.cow)
    second = make_farm(house.business, "High Croft", by=house.owner)
    other = _rows_of(house, second, make_cow(second, "505"), days=7)
    wanted(house.farm)
    again = _planned_again(house)
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    think_week_plan(week_plan=plan, limits=SolveLimits(iterations=10), at=SUNDAY_EVENING)
    made = make_calendar_address(business=house.business, wish=FeedWish("Phone"), at=NOON, by=house.owner)
    keys |= {
        "week_plan": plan.pk,
        "plan_shift": plan.plan["shifts"][0]["id"],
        "replan": again.pk,
        "van_out": VanOut.objects.within(house.scope).get().pk,
        "calendar_address": made.row.pk,
        **_clients_rows(house, house.farm, house.cow),
        **_sent(house),
        "access": FarmAccess.objects.within(house.scope).get().pk,
        "van": house.van.pk,
        "calendar_of_van": f"van-{house.van.pk}",
        "payer": Payer.objects.create(business=house.business, name="The Estate").pk,
        "contact": Contact.objects.create(
            business=house.business, farm=house.farm, name="H. Manager", part="Herd manager"
        ).pk,
        "membership": next(m.pk for m in house.memberships.values() if m.user == house.office),
    }
    other |= _clients_rows(house, second, Cow.objects.within(house.scope).get(pk=other["cow"]))
    keys |= (
        _money_terms(house)
        | kit_of(house)
        | identity_of(house)
        | {"errand": written(house.business, state="stuck").pk}
        | outside_of(house)
        | watch_of(house, keys["under_way"])
    )
    let_in_fully(house)
    return Furnished(house, keys, other, made.secret)


def let_in_fully(house: House) -> None:
    """The farm client may do everything at the first farm."""
    give_farm_rights(access=FarmAccess.objects.within(house.scope).get(), rights=set(FarmRight))


def _clients_rows(house: House, farm: Farm, cow: Cow) -> dict[str, object]:
    """What only the people of a farm come upon: an hour held for it, its issued invoice, its calendar."""
    done = under_way(farm, house.van, NOON - timedelta(days=9 if farm == house.farm else 10))
    put_down(done, cow, blocked_foot())
    draft = draft_invoice(visit=finish(done, house.trimmer), at=NOON)
    calendar = make_calendar_address(
        business=house.business, wish=FeedWish("Farm's phone", farm), at=NOON, by=house.client
    )
    issued = issue_invoice(invoice=draft, at=NOON, by=house.owner)
    return {
        "held": hold(house, offers(farm, weeks=3).fits[-1], farm).pk,
        "issued": issued.pk,
        **_booked(house, issued, done),
        **payments_of(house, issued),
        "farm_calendar": calendar.row.pk,
        "vet_pass": give_vet_pass(farm=farm, word=FOR_THE_VET, at=NOON, by=house.client).row.pk,
        "erasure": ask_erasure(farm=farm, note="", at=NOON, by=house.client).pk,
    }


def _booked(house: House, issued: Invoice, done: Visit) -> dict[str, object]:
    """A reminder put forward, and the first drive of a visit's day."""
    reminder = Reminder.objects.create(business=house.business, invoice=issued, step=1, proposed_at=NOON)
    drives = keep_day_journeys(van=house.van, day=done.started_at.date(), at=NOON)
    return {"reminder": reminder.pk, "journey": drives[0].pk}


def _money_terms(house: House) -> dict[str, object]:
    """A price list and a rate, something agreed with the first farm, and a logo."""
    scope, word = house.scope, {"kind": "percent", "amount": 5, "why": "Large herd", "valid_from": MONDAY}
    agreed = Agreement.objects.create(business=house.business, farm=house.farm, **word)
    MoneyRules.objects.create(business=house.business, logo=PICTURE)
    since = {"business": house.business, "valid_from": MONDAY, "source": "A test"}
    reference = ReferenceRate.objects.create(percent=4, **since)
    mileage = MileageRate.objects.create(unit="KMT", first_rate=1, **since)
    return {
        "agreement": agreed.pk,
        "reference_rate": reference.pk,
        "mileage_rate": mileage.pk,
        "price_list": PriceList.objects.within(scope).get().pk,
        "tax_rate": TaxRate.objects.within(scope).get(code="low").pk,
    }


def _sent(house: House) -> dict[str, object]:
    """The issued invoice of the first farm on its way, and a link to it."""
    invoice = Invoice.objects.within(house.scope).issued().get(farm=house.farm)
    to = ["farm@example.invalid"]
    (sending,) = send_invoice(invoice=invoice, at=NOON, by=house.office, addresses=to)
    link = make_invoice_link(invoice=invoice, at=NOON).row
    return {"sending": sending.pk, "invoice_link": link.pk, **outgoing_of(house, sending)}


def _draft_of(house: House, done: Visit) -> dict[str, object]:
    """The draft of a visit, a line of it, and a discount on the whole of it."""
    draft = draft_invoice(visit=done, at=NOON)
    off = WholeChange(is_charge=False, discount=Discount(amount=Decimal(1)))
    set_whole_amount(invoice=draft, change=off, hand=Hand(house.office, NOON, "Goodwill"))
    return {
        "invoice": draft.pk,
        "invoice_line": draft.lines.within(house.scope).first().pk,
        "invoice_whole": draft.document_amounts.within(house.scope).get().pk,
    }


def _changed(farm: Farm, house: House, cow: Cow) -> int:
    """A cow struck from the list of a wish without an hour."""
    visit = wanted(farm)
    strike_cow(visit=visit, cow=cow, why="Dry", at=NOON, by=house.client)
    return visit.draft_changes.within(house.scope).get().pk


def _planned_again(house: House) -> WeekPlan:
    """A plan made anew, for a van that is out of action on a day on which it stays in anyway."""
    sunday = SUNDAY_EVENING + timedelta(days=7)
    out = OutWord(house.van, OutBecause.CRUSH, sunday, sunday + timedelta(hours=2))
    plan = replan_week(
        business=house.business, monday=MONDAY, happening=out, at=SUNDAY_EVENING, by=house.owner
    )
    return think_replan(week_plan=plan, limits=SolveLimits(iterations=10), at=SUNDAY_EVENING)


def _rows_of(house: House, farm: Farm, cow: object, days: int = 0) -> dict[str, object]:
    start = TUESDAY_TEN + timedelta(days=days)
    done = under_way(farm, house.van, start - timedelta(days=1))
    trim = put_down(done, cow, blocked_foot(for_vet="hot above the horn"))
    photo = photo_of(trim)
    finish(done, house.trimmer)
    issue_first_report(visit=done, at=NOON)
    issue_letter(trim=trim, at=NOON, by=house.trimmer)
    herd = keep_herd_list(farm=farm, file_name="herd.csv", content=LIST, at=NOON, by=house.office)
    change = _changed(farm, house, cow)
    return {
        "farm": farm.pk,
        "cow": cow.pk,
        "herd_import": herd.pk,
        "planned": planned(farm, house.van, start).pk,
        "finished": done.pk,
        "under_way": under_way(farm, house.van, start + timedelta(hours=5)).pk,
        "trim": trim.pk,
        "photo": photo.uid,
        **_draft_of(house, done),
        "draft_change": change,
        **work_of(house, farm, cow, trim),
    }
