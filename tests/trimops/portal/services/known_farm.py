"""A farm of which there is a row of every kind, each with a word or a number that is nowhere else."""

from datetime import date, timedelta
from decimal import Decimal
from uuid import uuid4

from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Contact, Payer
from farms.services.ask_erasure import ask_erasure
from farms.services.give_vet_pass import VetWord, give_vet_pass
from farms.services.keep_herd_list import keep_herd_list
from farms.services.save_farm import save_farm
from invoicing.models import (
    Agreement,
    Allocation,
    BankEntry,
    BankFile,
    BankStatement,
    BilledWork,
    DocumentAmount,
    DraftEdit,
    FarmTerms,
    Invoice,
    LateWork,
    Payment,
    Reminder,
)
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.keep_day_journeys import keep_day_journeys
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.send_invoice import send_invoice
from invoicing.services.settle_invoice import settle_invoice
from invoicing.services.total_draft import total_draft
from tests.factories import (
    MONDAY,
    NOON,
    TUESDAY_TEN,
    House,
    blocked_foot,
    finish,
    make_cow,
    make_house,
    make_kit,
    make_prices,
    named,
    photo_of,
    planned,
    put_down,
    under_way,
    wanted,
)
from tests.trimops.outbox.messages import put
from trimops.api.models import RepeatableCall
from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.senders.ready import Part
from visits.domain.kit.stock_kinds import MovementKind, UseOf
from visits.models import (
    AddedCow,
    BladeTurn,
    CrushWriting,
    DraftChange,
    DraftChoice,
    HeldCow,
    HeldHour,
    Invitation,
    IssuedReport,
    LearnedLengths,
    LoneWatch,
    MobilityScore,
    MobilityScoring,
    PlanLock,
    ReferralLetter,
    RoadLeg,
    StockMovement,
    VisitMessage,
    WashDown,
    WatchCall,
    WatchEvent,
    WeekPlan,
)
from visits.selectors.reckoned_drives import base_of, place_of
from visits.services.kit.stock_place import place_of_van
from visits.services.make_calendar_address import FeedWish, make_calendar_address

WORDS = (
    *("Quillmarsh", "Bramblegate", "Zimmerwald", "7741X", "UK284205700016", "54.4567", "-2.9876"),
    *("0199 555 010", "hedgerow-mail", "Skirlwath", "GB998877665"),
)
"""What is told of the farm: its name, its lane, its people, a cow, her tag, the place, a phone, a mail, words, VAT."""


def known_farm() -> House:
    """Everything of the farm's rows, with one invoice issued and one drafted."""
    house = make_house()
    make_prices(house.business)
    make_kit(house.business)
    _the_place(house)
    cow = make_cow(house.farm, "7741X", {IdentityKind.OFFICIAL_TAG: "UK284205700016"}, note="Skirlwath kicks")
    Calving.objects.create(business=house.business, cow=cow, calved_on=MONDAY)
    for days in (0, 7):
        _a_visit(house, cow, TUESDAY_TEN + timedelta(days=days), issued=days == 0)
    open_visit = planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=14), note="Skirlwath track")
    wanted(house.farm, asked_by="Ida Zimmerwald")
    _before_the_visit(house, cow, open_visit)
    _of_the_planner(house, open_visit)
    _links(house)
    _how_it_is_billed(house)
    _sent(house)
    _in_the_books(house)
    _answered(house)
    return house


def _the_place(house: House) -> None:
    farm, business = house.farm, house.business
    farm.name, farm.address = "Quillmarsh", "Bramblegate Lane\nNowhere"
    farm.latitude, farm.longitude = Decimal("54.4567"), Decimal("-2.9876")
    farm.access_notes, farm.phone = "Mind the Skirlwath dog", "0199 555 010"
    farm.email, farm.vat_number = "herd@hedgerow-mail.example", "GB998877665"
    farm.payer = Payer.objects.create(
        business=business, name="Zimmerwald Estate", address="Bramblegate Hall\nNowhere"
    )
    farm.hygiene_level, farm.hygiene_reason, farm.hygiene_since = 2, "Skirlwath came in", MONDAY
    farm.wash_rule = "Boots in the Skirlwath tub"
    save_farm(farm=farm, at=NOON, by=house.owner)
    house.client.name, house.client.email = "Ida Zimmerwald", "ida@hedgerow-mail.example"
    house.client.save()
    Contact.objects.create(business=business, farm=farm, name="Otto Zimmerwald", part="Owner")


def _a_visit(house: House, cow, start, *, issued: bool) -> None:
    visit = under_way(
        house.farm, house.van, start, cows=[named(cow, "Skirlwath says lame")], note="Bramblegate end"
    )
    foot = blocked_foot(drew_blood=True, for_vet="Skirlwath smell")
    trim = put_down(visit, cow, foot, note="Skirlwath again")
    photo_of(trim)
    made = {"business": house.business, "made_at": NOON, "pdf": b"%PDF Quillmarsh", "sha256": "0" * 64}
    ReferralLetter.objects.create(trim=trim, content={"cow": "7741X"}, **made)
    IssuedReport.objects.create(visit=visit, content={"farm": "Quillmarsh"}, **made)
    StockMovement.objects.create(
        business=house.business,
        consumable=trim.consumables_used.within(house.scope).first().consumable,
        place=place_of_van(house.van),
        kind=MovementKind.USED,
        use_of=UseOf.BY_HAND,
        visit=visit,
        quantity=-1,
        at=start,
        noted_at=start,
    )
    BladeTurn.objects.create(business=house.business, visit=visit, record=uuid4(), at=start, by=house.trimmer)
    WashDown.objects.create(
        business=house.business,
        visit=visit,
        record=uuid4(),
        substance="peracetic acid",
        dilution="Skirlwath 1 %",
        contact_minutes=10,
        washed_at=start,
        by=house.trimmer,
    )
    CrushWriting.objects.create(
        business=house.business,
        uid=uuid4(),
        visit=visit,
        kind="cow",
        record=trim.client_id,
        cow=cow,
        content={"note": "Skirlwath again"},
        phone=uuid4(),
        made_at=start,
        placed_at=start,
        received_at=start,
        by=house.trimmer,
    )
    _watched_over(house, visit, start)
    invoice = draft_invoice(visit=finish(visit, house.trimmer), at=NOON)
    _discounted(house, invoice)
    if issued:
        _paid(house, issue_invoice(invoice=invoice, at=NOON, by=house.office))


def _watched_over(house: House, visit, start) -> None:
    """The trimmer did not check in, and somebody was told where to look."""
    made = {
        "business": house.business,
        "taken_by": "Otto Zimmerwald",
        "began_at": start,
        "expected_finish": start,
    }
    watch = LoneWatch.objects.create(visit=visit, trimmer=house.trimmer, **made)
    called = {"business": house.business, "watch": watch, "at": start}
    WatchCall.objects.create(**called, number=1, name="Ida Zimmerwald", secret_hash=uuid4().hex)
    WatchEvent.objects.create(**called, words="Otto Zimmerwald is told.")


def _how_it_is_billed(house: House) -> None:
    of_farm = {"business": house.business, "farm": house.farm}
    FarmTerms.objects.create(**of_farm, send_to=["ida@hedgerow-mail.example"], note="Skirlwath pays late")
    Agreement.objects.create(**of_farm, kind="percent", amount=5, why="Skirlwath herd", valid_from=MONDAY)


def _sent(house: House) -> None:
    """The issued invoice is on its way to the farm, and a link opens it."""
    invoice = Invoice.objects.within(house.scope).issued().get()
    make_invoice_link(invoice=invoice, at=NOON)
    words = {"subject": "Skirlwath", "body": "To Quillmarsh in Bramblegate Lane"}
    to = ["ida@hedgerow-mail.example"]
    send_invoice(invoice=invoice, at=NOON, by=house.office, addresses=to, **words)
    paper = Part("Quillmarsh.pdf", "application/pdf", b"%PDF Skirlwath")
    put(house, farm_id=house.farm.pk, subject="Quillmarsh", body="Bramblegate Lane", parts=[paper])
    # About no farm, but to one of its people.
    put(house, topic=Topic.SIGN_IN, address=house.client.email, body="Hello Ida Zimmerwald, {secret}")


def _discounted(house: House, invoice: Invoice) -> None:
    tax = {"tax_category": "S", "tax_percent": 20}
    DocumentAmount.objects.create(
        business=house.business, invoice=invoice, amount=1, reason="Skirlwath", **tax
    )
    words = {"what": "Discount for Skirlwath", "reason": "Otto Zimmerwald asked"}
    DraftEdit.objects.create(business=house.business, invoice=invoice, at=NOON, by=house.office, **words)
    total_draft(invoice=invoice)


def _paid(house: House, invoice: Invoice) -> None:
    """A part of it came in."""
    business, by = house.business, house.office
    payment = Payment.objects.create(
        business=business,
        farm=house.farm,
        received_on=MONDAY,
        amount=5,
        currency="GBP",
        method="bank",
        payer_name="Zimmerwald Estate",
        note="Part, for Skirlwath",
        bank_entry=_on_the_bank(house),
        noted_at=NOON,
        noted_by=by,
    )
    Allocation.objects.create(
        business=business,
        invoice=invoice,
        kind="payment",
        payment=payment,
        amount=5,
        on=MONDAY,
        noted_at=NOON,
        noted_by=by,
    )
    settle_invoice(invoice=invoice)


def _on_the_bank(house: House) -> BankEntry:
    """What the bank told of it, in a file that tells of others as well."""
    business, by = house.business, house.office
    file = BankFile.objects.create(
        business=business,
        file_name="march.csv",
        sha256="0" * 64,
        content=b"2026-03-02;5.00;Zimmerwald Estate",
        kept_at=NOON,
        kept_by=by,
    )
    statement = BankStatement.objects.create(
        business=business, file=file, form="csv", read_at=NOON, read_by=by
    )
    return BankEntry.objects.create(
        business=business,
        statement=statement,
        key="1",
        booked_on=MONDAY,
        amount=5,
        currency="GBP",
        party_name="Zimmerwald Estate",
        text="Quillmarsh feet",
    )


def _before_the_visit(house: House, cow, visit) -> None:
    business, by = house.business, house.client
    AddedCow.objects.create(business=business, uid=uuid4(), cow=cow)
    DraftChoice.objects.create(
        business=business, farm=house.farm, rule_set="usual", changed_at=NOON, changed_by=by
    )
    DraftChange.objects.create(
        business=business, visit=visit, cow=cow, kind="added", why="Skirlwath limp", at=NOON, by=by
    )
    scoring = MobilityScoring.objects.create(
        business=business,
        farm=house.farm,
        scored_on=MONDAY,
        scale="UK0-3",
        scored_by="Ida Zimmerwald",
        noted_at=NOON,
        noted_by=by,
    )
    MobilityScore.objects.create(business=business, scoring=scoring, cow=cow, score=2)
    start = TUESDAY_TEN + timedelta(days=21)
    hour = HeldHour.objects.create(
        business=business,
        farm=house.farm,
        reason="urgent",
        asked_by="Ida Zimmerwald",
        due_from=date(2026, 3, 20),
        due_until=date(2026, 3, 30),
        head_count=1,
        minutes=30,
        van=house.van,
        start=start,
        first_start=start,
        last_start=start,
        held_at=NOON,
        until=NOON + timedelta(minutes=10),
        by=by,
    )
    HeldCow.objects.create(business=business, held=hour, cow=cow, why="Skirlwath lame")


def _of_the_planner(house: House, visit) -> None:
    business, farm = house.business, house.farm
    PlanLock.objects.create(
        business=business, visit=visit, van=house.van, day=MONDAY, at=NOON, by=house.owner
    )
    site = {"id": f"farm-{farm.pk}", "lat": 54.4567, "lon": -2.9876, "hygiene": 1}
    WeekPlan.objects.create(
        business=business,
        monday=MONDAY,
        problem={"sites": [site], "jobs": [{"id": f"visit-{visit.pk}", "site": site["id"]}]},
        because="Van 1 runs late at Quillmarsh until 12:00",
        asked_at=NOON,
        asked_by=house.owner,
    )
    LearnedLengths.objects.create(
        business=business,
        rule={"farms": {str(farm.pk): {"minutes": 3}, "0": {"minutes": 1}}},
        visits=1,
        learned_at=NOON,
        **{f"held_out_{name}": 0 for name in ("visits", "error", "flat_error", "figures_error", "kept")},
    )
    RoadLeg.objects.create(
        business=business,
        engine="map",
        from_place=base_of(house.van).key,
        to_place=place_of(farm).key,
        deciseconds=1,
        metres=1,
        asked_at=NOON,
    )


def _links(house: House) -> None:
    keep_herd_list(
        farm=house.farm, file_name="Quillmarsh.csv", content=b"number\n7741X\n", at=NOON, by=house.office
    )
    word = VetWord("Vet of Bramblegate", "vet@hedgerow-mail.example", ("shows_cows",), 30)
    give_vet_pass(farm=house.farm, word=word, at=NOON, by=house.client)
    make_calendar_address(
        business=house.business, wish=FeedWish("Zimmerwald phone", house.farm), at=NOON, by=house.client
    )
    ask_erasure(farm=house.farm, note="Zimmerwald retires", at=NOON, by=house.client)


def _answered(house: House) -> None:
    """A program was told of the farm, and may ask for the same answer again."""
    call = {"user": house.office, "key": "k", "fingerprint": "f", "called_at": NOON}
    RepeatableCall.objects.create(business=house.business, body=["Quillmarsh", "7741X", "Zimmerwald"], **call)


def _in_the_books(house: House) -> None:
    """A reminder of each state, work that is billed no more, and the drives of its visits; the first was mended."""
    issued = Invoice.objects.within(house.scope).issued().get(farm=house.farm)
    of_issued = {"business": house.business, "invoice": issued, "proposed_at": NOON}
    Reminder.objects.create(**of_issued, step=1, state="dropped", dropped_because="Zimmerwald rang")
    approved = {"state": "approved", "open_amount": 9, "pdf": b"%PDF Quillmarsh, Bramblegate Lane"}
    Reminder.objects.create(**of_issued, step=2, **approved)
    Reminder.objects.create(**of_issued, step=3)
    of_visit = {"business": house.business, "visit_id": issued.visit_id}
    told = {
        "start": NOON,
        "finish": NOON + timedelta(hours=2),
        "is_confirmed": True,
        "sequence": 2,
        "sent_at": NOON,
    }
    VisitMessage.objects.create(**of_visit, kind="booked", hour=NOON, made_at=NOON)
    Invitation.objects.create(**of_visit, address="herd@hedgerow-mail.example", name="A. Zimmerwald", **told)
    LateWork.objects.create(**of_visit, found_at=NOON, added=1, gone=0)
    BilledWork.objects.create(
        **of_visit, key="trim/late", words="cow 7741X", not_billed_because="Zimmerwald is a friend"
    )
    drives = keep_day_journeys(van=house.van, day=TUESDAY_TEN.date(), at=NOON + timedelta(days=9))
    drives[0].mended_because = "Bramblegate was flooded"
    drives[0].save()
