"""A list page asks the database as often for many rows as for few."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest
from django.core.cache import caches
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from farms.domain.told_by import LANGUAGES
from farms.models import Contact, Farm
from invoicing.services.draft_invoice import draft_invoice
from tests.factories import (
    MONDAY,
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    let_in,
    make_consumable,
    make_cow,
    make_farm,
    make_house,
    make_member,
    make_prices,
    make_van,
    photo_of,
    planned,
    put_down,
    under_way,
    wanted,
)
from tests.trimops.errands.errand_hands import written
from tests.trimops.outbox.messages import put
from tests.trimops.outbox.webhooks import make_webhook
from tests.walls.furnished import SUNDAY_EVENING
from trimops.accounts.roles import Role
from trimops.outbox.services.try_webhook import try_webhook
from visits.domain.kit.stock_kinds import ConsumableKind, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.domain.mobility import MobilityScale
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import (
    Consumable,
    DraftChange,
    DraftKind,
    MessageText,
    OutsideBusy,
    OutsideCalendar,
    Van,
    VisitMessage,
)
from visits.services.ask_week_plan import ask_week_plan
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.count_stock import count_stock
from visits.services.kit.stock_place import place_of_van
from visits.services.kit.stock_places import stock_places_of
from visits.services.kit.stock_word import Amount, StockWord
from visits.services.make_calendar_address import FeedWish, make_calendar_address
from visits.services.note_scores import CowScore, ScoringWord, note_scores
from visits.services.think_week_plan import think_week_plan

FEW, MANY = 2, 9


@pytest.fixture
def house(db):
    house = make_house()
    make_prices(house.business)
    return house


def more_farms(house, count):
    known = Farm.objects.within(house.scope).count()
    return [
        make_farm(house.business, f"Farm {known + n}", by=house.owner, latitude=54 + n / 100)
        for n in range(count)
    ]


def more_visits(house, count):
    for farm in more_farms(house, count):
        wanted(farm)


def more_work(house, count):
    """Finished visits to the one farm, each with a cow, a block that stays on and a re-check."""
    done = []
    known = house.farm.visits.within(house.scope).count()
    for n in range(count):
        visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=known + n))
        put_down(visit, make_cow(house.farm, str(1000 + known + n)), blocked_foot())
        done.append(finish(visit, house.trimmer))
        wanted(house.farm)
    return done


def more_invoices(house, count):
    for visit in more_work(house, count):
        draft_invoice(visit=visit, at=TUESDAY_TEN)


def more_people(house, count):
    for _ in range(count):
        make_member(house.business, Role.TRIMMER)


def more_cows_and_contacts(house, count):
    for n in range(count):
        make_cow(house.farm, str(500 + n))
        Contact.objects.create(business=house.business, farm=house.farm, name=f"Ringer {n}", part="Owner")


def more_vans(house, count):
    known = Van.objects.within(house.scope).count()
    for n in range(count):
        make_van(house.business, house.trimmer, f"Another van {known + n}")


def more_addresses(house, count):
    for n in range(count):
        make_calendar_address(
            business=house.business, wish=FeedWish(f"Phone {n}", house.van), at=TUESDAY_TEN, by=house.owner
        )


def more_of_a_planned_week(house, count):
    """Wanted visits, some left for the list, and the newest plan over all of them."""
    more_visits(house, count)
    plan = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    think_week_plan(week_plan=plan, limits=SolveLimits(iterations=10), at=SUNDAY_EVENING)
    assert plan.state == "proposed"


def more_cows_at_the_crush(house, count):
    visit = house.farm.visits.within(house.scope).filter(state="under_way").first()
    visit = visit or under_way(house.farm, house.van)
    known = house.farm.cows.within(house.scope).count()
    for n in range(count):
        put_down(visit, make_cow(house.farm, str(2000 + known + n)), blocked_foot())


def more_cows_to_draft(house, count):
    """Each scored lame, and struck from or added to the list of a visit with an hour."""
    visit = house.farm.visits.within(house.scope).first() or planned(house.farm, house.van)
    known = house.farm.cows.within(house.scope).count()
    cows = [make_cow(house.farm, str(3000 + known + n)) for n in range(count)]
    word = ScoringWord(MONDAY, MobilityScale.UK, [CowScore(cow.pk, 2) for cow in cows])
    note_scores(farm=house.farm, word=word, at=TUESDAY_TEN, by=house.office)
    for n, cow in enumerate(cows):
        kind = DraftKind.ADDED if n % 2 else DraftKind.STRUCK
        DraftChange.objects.create(
            business=house.business, visit=visit, cow=cow, kind=kind, why="limps", at=NOON, by=house.client
        )


def more_own_calendars(house, count):
    """Each with entries of this week, some of them long."""
    for n in range(count):
        calendar = OutsideCalendar.objects.create(
            business=house.business, van=house.van, name=f"Own {n}", made_at=NOON, made_by=house.owner
        )
        for hours in (1, 30):
            OutsideBusy.objects.create(
                business=house.business,
                calendar=calendar,
                starts=timezone.now() + timedelta(days=n),
                ends=timezone.now() + timedelta(days=n, hours=hours),
            )


def more_webhooks(house, count):
    for _ in range(count):
        row = make_webhook(house, f"https://books.example/{uuid4()}")
        try_webhook(address=row, at=NOON)


def more_told(house, count):
    """People who are told, and a visit whose farm was told by each; texts in as many languages."""
    visit = house.farm.visits.within(house.scope).first() or planned(house.farm, house.van)
    known = MessageText.objects.within(house.scope).count()
    for language in list(LANGUAGES)[known : known + count]:
        MessageText.objects.create(business=house.business, kind="tomorrow", language=language, short="{day}")
        fields = {"business": house.business, "farm": house.farm, "part": "Owner", "told_by": "sms"}
        ringer = Contact.objects.create(name=f"Ringer {language}", phone="0199 555 020", **fields)
        row = put(house, farm_id=house.farm.pk)
        told = {"kind": "booked", "hour": visit.planned_start, "made_at": NOON, "outgoing_id": row.pk}
        VisitMessage.objects.create(business=house.business, visit=visit, contact=ringer, **told)


def told_of(house):
    return reverse("visit", args=[house.farm.visits.within(house.scope).get().pk])


def draft_of(house):
    return reverse("draft", args=[house.farm.visits.within(house.scope).get().pk])


def more_of_one_cow(house, count):
    """Finished visits at which the one cow had a foot with a lesion, a block and a photo."""
    known = house.farm.visits.within(house.scope).count()
    for n in range(count):
        visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=known + n))
        photo_of(put_down(visit, house.cow, blocked_foot()))


def more_consumables(house, count):
    """Each bought, counted in the van, used by a recipe, with a lot that has a date."""
    known = Consumable.objects.within(house.scope).count()
    store, van = stock_places_of(house.scope)
    for n in range(known, known + count):
        item = make_consumable(
            house.business, f"Thing {n}", ConsumableKind.OTHER, Recipe(UsePer.COW, Decimal(1)), shelf_days=90
        )
        word = StockWord(NOON, NOON, house.owner, uuid4())
        buy_stock(place=store, bought=[BoughtItem(item, Decimal(100), Decimal(20))], word=word)
        count_stock(place=van, counted=[Amount(item, Decimal(n))], word=replace(word, uid=uuid4()))


def more_of_one_consumable(house, count):
    """Lots bought at the store, each with a line of its own."""
    rows = Consumable.objects.within(house.scope)
    item = rows.first() or make_consumable(house.business, "Thing", ConsumableKind.OTHER)
    store, _ = stock_places_of(house.scope)
    for n in range(count):
        bought = BoughtItem(item, Decimal(10), None, f"L{n}")
        buy_stock(place=store, bought=[bought], word=StockWord(NOON, NOON, house.owner, uuid4()))


def item_of(house):
    return reverse("kit_item", args=[Consumable.objects.within(house.scope).first().pk])


def count_of(house):
    return reverse("kit_count", args=[place_of_van(house.van).pk])


def crush_of(house):
    return reverse("crush_papers", args=[house.farm.visits.within(house.scope).get(state="under_way").pk])


def more_stuck(house, count):
    for _ in range(count):
        written(house.business, state="stuck", ended_at=NOON, ids={"visit_id": 1})


def more_changes(house, count):
    for number in range(count):
        house.farm.access_notes = f"Gate {uuid4()}"
        house.farm.save()
        wanted(house.farm, house.owner, note=f"{number} {uuid4()}")


PAGES = {
    "farms": (Role.OWNER, lambda house: reverse("farm_list"), more_farms),
    "visits": (Role.OWNER, lambda house: reverse("visit_list"), more_visits),
    "finished visits": (Role.OWNER, lambda house: reverse("visit_list") + "?state=finished", more_work),
    "invoices": (Role.OFFICE, lambda house: reverse("invoice_list"), more_invoices),
    "what is ready to bill": (Role.OFFICE, lambda house: reverse("bill_ready"), more_work),
    "the week": (Role.OWNER, lambda house: reverse("this_week") + f"?week={MONDAY}", more_of_a_planned_week),
    "people": (Role.OWNER, lambda house: reverse("people"), more_people),
    "a farm": (Role.OWNER, lambda house: reverse("farm", args=[house.farm.pk]), more_cows_and_contacts),
    "the farm client's page": (Role.FARM, lambda house: reverse("portal_home"), more_work),
    "a cow of the farm client": (
        Role.FARM,
        lambda house: reverse("portal_cow", args=[house.cow.pk]),
        more_of_one_cow,
    ),
    "vans": (Role.OWNER, lambda house: reverse("vans"), more_vans),
    "messages to farms": (Role.OFFICE, lambda house: reverse("messages"), more_told),
    "one kind of message": (Role.OFFICE, lambda house: reverse("message", args=["tomorrow"]), more_told),
    "a visit whose farm was told": (Role.OFFICE, told_of, more_told),
    "calendars": (Role.OWNER, lambda house: reverse("calendar"), more_addresses),
    "other programs": (Role.OWNER, lambda house: reverse("webhooks"), more_webhooks),
    "what got stuck": (Role.OWNER, lambda house: reverse("stuck"), more_stuck),
    "all changes": (Role.OWNER, lambda house: reverse("changes") + "?kind=farms.farm", more_changes),
    "changes of a farm": (
        Role.TRIMMER,
        lambda house: reverse("farm_changes", args=[house.farm.pk]),
        more_changes,
    ),
    "changes of a visit": (
        Role.OFFICE,
        lambda house: reverse("visit_changes", args=[house.farm.visits.within(house.scope).first().pk]),
        more_work,
    ),
    "vans with calendars": (Role.OWNER, lambda house: reverse("vans"), more_own_calendars),
    "calendars of a van": (
        Role.TRIMMER,
        lambda house: reverse("van_calendars", args=[house.van.pk]),
        more_own_calendars,
    ),
    "the week with calendars": (Role.OWNER, lambda house: reverse("this_week"), more_own_calendars),
    "a draft list": (Role.OFFICE, draft_of, more_cows_to_draft),
    "rounds of scores": (
        Role.OFFICE,
        lambda house: reverse("mobility", args=[house.farm.pk]),
        more_cows_to_draft,
    ),
    "the cows of a visit": (Role.TRIMMER, crush_of, more_cows_at_the_crush),
    "the kit": (Role.OFFICE, lambda house: reverse("kit"), more_consumables),
    "a consumable": (Role.OFFICE, item_of, more_of_one_consumable),
    "a place to count": (Role.TRIMMER, count_of, more_consumables),
}


def queries_for(client, address):
    caches["worked_out"].clear()  # what is kept of the ledger counts as not read yet
    with CaptureQueriesContext(connection) as asked:
        assert client.get(address).status_code == 200
    return [query["sql"] for query in asked.captured_queries]


MOST = {"the cows of a visit": 32}
"""Thirty else. The papers that a phone fetches once for a visit hold seven parts, and ask after the watch twice."""


@pytest.mark.parametrize("page", PAGES)
def test_many_rows_take_as_many_queries_as_few(house, page):
    role, address_of, add = PAGES[page]
    client = Client()
    client.force_login(house.memberships[role].user)
    add(house, FEW)
    address = address_of(house)
    client.get(address)  # what is asked once in a process is not counted
    few = queries_for(client, address)
    add(house, MANY - FEW)
    many = queries_for(client, address)
    assert len(many) == len(few), "\n".join(many)
    assert len(many) <= MOST.get(page, 30)


def test_a_client_of_many_farms_takes_no_more_queries_either(house):
    client = Client()
    client.force_login(house.client)
    client.get(reverse("portal_home"))
    few = queries_for(client, reverse("portal_home"))
    for farm in more_farms(house, 10):
        let_in(house.memberships[Role.FARM], farm)
    assert len(queries_for(client, reverse("portal_home"))) == len(few)
