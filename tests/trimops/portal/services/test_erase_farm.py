"""A farm is erased: no word of it is left anywhere but on its invoices."""

import json
from datetime import timedelta

import pytest
from django.apps import apps
from django.db import transaction
from django.db.models import Model

from farms.models import Cow, Erasure, Farm, FarmAccess
from farms.services.close_farm_access import close_farm_access
from farms.services.invite_farm_client import FarmGuest, invite_farm_client
from farms.services.refuse_erased import FarmIsErased
from invoicing import models as money
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Allocation, Invoice, InvoiceLine, InvoicePapers, Journey, Payment, Reminder
from invoicing.selectors.books_of_farm import loose_ends
from invoicing.selectors.ready_to_bill import ready_to_bill
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.note_payment import MoneyReceived, note_payment
from tests.factories import NOON, TUESDAY_TEN, let_in, make_farm, under_way, wanted
from tests.trimops.portal.services.known_farm import WORDS, known_farm
from trimops.accounts.models import User
from trimops.kernel.scope import Scope
from trimops.portal.services.erase_farm import NameDoesNotMatch, VisitIsUnderWay, erase_farm
from trimops.tenancy.tables import is_tenant_model
from trimops.tenancy.unscoped import unscoped
from visits.models import BladeTurn, LearnedLengths, RoadLeg, StockMovement, Visit, WeekPlan
from visits.selectors.kit.reckoned_items import reckoned_items
from visits.services.visit_change import add_event

BOOKS = {
    *(Invoice, InvoiceLine, InvoicePapers, money.DocumentAmount, money.DraftEdit),
    *(Payment, Allocation, money.BankEntry, money.BankStatement, money.BankFile, Reminder),
}
"""What the law keeps, with the words that stand in it. Of drafts nothing stays, of reminders those that went out."""
WORDLESS = {
    money.BilledWork: {"words", "trim_id", "not_billed_because"},
    Journey: {"from_words", "to_words", "mended_because", "visit_id"},
}
"""Books too, but what names the farm or a cow is taken out of these columns."""
CONVENIENCE = {
    *(money.Agreement, money.FarmTerms, money.Sending, money.InvoiceLink),
    money.LateWork,
}
OF_THE_BUSINESS = {
    *(money.BankMapping, money.MileageRate, money.MoneyRules, money.NumberSeries, money.PeriodLock),
    *(money.Price, money.PriceList, money.ReferenceRate, money.TaxRate, money.TravelBand),
}
STAYS = {Farm, Visit, Erasure, Payment, Allocation, Invoice, InvoiceLine, InvoicePapers, money.DocumentAmount}
"""What leads to a farm and stays: the bare farm, its books, the bare visits they hang on, the wish."""
LATER = NOON + timedelta(days=30)


@pytest.fixture(scope="module")
def known(django_db_setup, django_db_blocker):
    """Made once for the file and taken back at its end; each test erases in a transaction of its own."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield known_farm()
        transaction.set_rollback(True)


@pytest.fixture
def house(known, db):
    return known


def erase(house, name="quillmarsh "):
    return erase_farm(farm=house.farm, typed_name=name, at=LATER, by=house.owner)


def models_of_a_farm() -> list[type[Model]]:
    return [model for model in apps.get_models() if is_tenant_model(model) and model.farm_path]


@unscoped("the test looks into every table there is")
def tables_that_tell() -> dict[str, set[str]]:
    """Word -> each table in which it stands, in any column, in any form that the database keeps."""
    found: dict[str, set[str]] = {word: set() for word in WORDS}
    for model in apps.get_models():
        for row in model._base_manager.all().values():
            told = " ".join(_text(value) for value in row.values()).casefold()
            for word in WORDS:
                if word.casefold() in told:
                    found[word].add(model.__name__)
    return found


def _text(value: object) -> str:
    if isinstance(value, bytes | memoryview):
        return bytes(value).decode("latin-1")
    return json.dumps(value, ensure_ascii=False) if isinstance(value, dict | list) else str(value)


def test_no_word_of_the_farm_is_left_in_any_table_but_on_its_invoices(house):
    with unscoped("the test counts"):
        empty = [m.__name__ for m in models_of_a_farm() if not m._base_manager.exists()]
    assert not empty, "a kind of rows that hangs on a farm needs one in known_farm.py, or this proves nothing"
    beside = wanted(make_farm(house.business, "High Croft", by=house.owner))
    add_event(beside, before="", at=NOON, by=house.owner, note="makes room for Quillmarsh")
    assert all(tables_that_tell().values())
    erase(house)
    left = {word: tables - {model.__name__ for model in BOOKS} for word, tables in tables_that_tell().items()}
    assert {word: tables for word, tables in left.items() if tables} == {}


def test_no_row_hangs_on_the_farm_but_those_that_say_so(house):
    erase(house)
    of_farm = Scope(house.business.pk, house.farm.pk)
    left = {m for m in models_of_a_farm() if m.objects.within(of_farm).exists()}
    assert left == STAYS


def test_each_kind_of_rows_of_the_money_is_sorted_and_of_each_that_goes_or_stays_there_is_one(house):
    sorted_out = [*BOOKS, *WORDLESS, *CONVENIENCE, *OF_THE_BUSINESS]
    assert len(sorted_out) == len(set(sorted_out))
    assert set(sorted_out) == set(apps.get_app_config("invoicing").get_models())
    before = {model: rows_of(model) for model in (*BOOKS, *WORDLESS, *CONVENIENCE)}
    assert all(before.values())
    erase(house)
    assert not any(rows_of(model) for model in CONVENIENCE)
    for model in (*BOOKS, *WORDLESS):
        blank = WORDLESS.get(model, set())
        after = rows_of(model)
        assert after
        new = {pk for pk in after if pk not in before[model]}
        assert not new or model is Journey  # the day that was not in the log yet
        for pk in after.keys() - new:
            was, is_now = before[model][pk], after[pk]
            assert {name for name, value in is_now.items() if value != was[name]} <= blank


@unscoped("the test compares all rows of a table")
def rows_of(model: type[Model]) -> dict[int, dict[str, object]]:
    return {row["id"]: row for row in model._base_manager.values()}


def test_of_each_kind_of_books_what_was_issued_paid_or_sent_stays(house):
    erase(house)
    assert {len(rows_of(model)) for model in BOOKS - {InvoiceLine}} == {1}
    lines = InvoiceLine.objects.within(house.scope)
    assert lines.exists()
    assert not lines.exclude(invoice__state="issued").exists()
    assert Reminder.objects.within(house.scope).get().state == "approved"


def test_the_miles_of_both_visits_stay_in_the_log(house):
    erase(house)
    drives = Journey.objects.within(house.scope).order_by("on", "position")
    assert len(drives) == 4  # out and home; the second day was not in the log before
    assert all(drive.distance > 0 for drive in drives)
    assert [drive.to_words for drive in drives] == ["an erased farm", "Yard"] * 2
    assert drives[0].mended_because == "Mended; why is erased with the farm"


def test_what_is_owed_can_still_be_paid_and_nothing_of_it_is_to_be_billed_again(house):
    erase(house)
    bill = Invoice.objects.within(house.scope).get()
    left = bill.open_amount
    told = {"farm": bill.farm, "received_on": LATER.date(), "currency": "GBP", "method": PaymentMethod.BANK}
    note_payment(money=MoneyReceived(amount=left, shares={bill.pk: left}, **told), at=LATER, by=house.office)
    bill.refresh_from_db()
    assert not bill.is_open
    visit = Visit.objects.within(house.scope).get()
    assert draft_invoice(visit=visit, at=LATER) == bill
    assert ready_to_bill(house.scope, LATER.date()).is_empty


def test_what_is_not_done_is_told_before_and_forbids_nothing(house):
    ends = loose_ends(house.scope, house.farm, LATER.date())
    bill = Invoice.objects.within(house.scope).issued().get()
    assert (ends.unbilled, ends.changed, ends.drafts, ends.mails) == (0, 1, 1, 1)
    assert [(sum_.currency, sum_.left) for sum_ in ends.to_pay] == [("GBP", bill.payable - bill.settled)]
    assert ends.unused == []


def test_the_invoice_stays_as_it_was_printed_and_its_visit_without_a_word(house):
    issued = Invoice.objects.within(house.scope).issued().select_related("papers")
    before = issued.get()
    erase(house)
    invoice = issued.get()
    assert (invoice.number, invoice.papers.pdf, invoice.buyer) == (
        before.number,
        before.papers.pdf,
        before.buyer,
    )
    assert "Zimmerwald Estate" in json.dumps(invoice.buyer)
    visit = Visit.objects.within(house.scope).get()
    assert visit.pk == invoice.visit_id
    assert (visit.note, visit.signed_by, visit.asked_by, visit.hygiene_note) == ("", "", "", "")
    assert visit.started_at == TUESDAY_TEN
    assert visit.head_count == 12


def test_what_went_and_what_stayed_is_kept_with_the_wish_that_the_farm_had_put_down(house):
    wish = Erasure.objects.within(house.scope).get()
    done = erase(house)
    assert done.pk == wish.pk
    assert (done.done_at, done.done_by, done.note) == (LATER, house.owner, "")
    assert done.outcome["kept"] == {
        "invoices": 1,
        "payments": 1,
        "reminders that went out": 1,
        "visits without words": 1,
    }
    assert done.outcome["erased"]["cows"] == 2
    assert done.outcome["erased"]["photos"] == 2
    assert done.outcome["erased"]["drafts of invoices"] == 1
    assert done.outcome["erased"]["reminders that did not go out"] == 2
    assert done.outcome["erased"]["people forgotten"] == 1


def test_a_farm_that_only_rang_gets_its_wish_put_down(house):
    Erasure.objects.within(house.scope).delete()
    assert erase(house).asked_by == house.owner


def test_the_person_of_the_farm_has_no_way_in_and_no_name(house):
    erase(house)
    user = User.objects.get(pk=house.client.pk)
    assert not user.is_active
    assert user.name == f"Erased person {user.pk}"


@pytest.mark.parametrize("is_known_elsewhere", [False, True])
def test_who_left_before_is_forgotten_too_but_not_out_of_another_farms_history(house, is_known_elsewhere):
    guest = FarmGuest("eva@hedgerow-mail.example", "Eva Zimmerwald")
    left = invite_farm_client(farm=house.farm, guest=guest, at=NOON, by=house.owner)
    left.joined_at = NOON
    left.save()
    wanted(house.farm, by=left.user)
    if is_known_elsewhere:
        wanted(make_farm(house.business, "High Croft", by=house.owner), by=left.user)
    close_farm_access(access=FarmAccess.objects.within(house.scope).get(membership=left), at=NOON)
    erase(house)
    assert (User.objects.get(pk=left.user_id).name == guest.name) is is_known_elsewhere


def test_a_person_of_another_farm_of_the_business_keeps_that_one(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    membership = next(m for m in house.memberships.values() if m.user == house.client)
    let_in(membership, second)
    erase(house)
    membership.refresh_from_db()
    assert membership.is_current
    assert User.objects.get(pk=house.client.pk).is_active


def test_the_stock_ledger_keeps_its_lines_and_all_that_follows_from_them(house):
    rows = StockMovement.objects.within(house.scope)
    lines = set(rows.values_list("pk", "at", "quantity", "use_of"))
    standing = reckoned_items(house.scope, items := {row.consumable_id for row in rows})
    assert rows.filter(trim__isnull=False).exists()
    assert rows.filter(visit__isnull=False).exists()
    assert BladeTurn.objects.within(house.scope).exists()
    erase(house)
    assert set(rows.values_list("pk", "at", "quantity", "use_of")) == lines
    assert reckoned_items(house.scope, items) == standing
    assert not rows.filter(trim__isnull=False).exists()
    assert not rows.filter(visit__isnull=False).exists()
    assert not BladeTurn.objects.within(house.scope).exists()


def test_the_planner_forgets_the_place_and_keeps_its_plans(house):
    erase(house)
    plan = WeekPlan.objects.within(house.scope).get()
    assert plan.problem["sites"][0]["lat"] == float(house.van.base_latitude)
    assert list(LearnedLengths.objects.within(house.scope).get().rule["farms"]) == ["0"]
    assert not RoadLeg.objects.within(house.scope).exists()


def test_another_farm_is_not_touched(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    cow = Cow.objects.create(business=house.business, farm=second, number="505")
    other = under_way(second, house.van, TUESDAY_TEN + timedelta(days=35), note="Gate code 4")
    erase(house)
    assert Cow.objects.within(house.scope).get() == cow
    assert Visit.objects.within(house.scope).get(pk=other.pk).note == "Gate code 4"


@pytest.mark.parametrize("name", ["", "Quillmarsh Farm", "yes"])
def test_another_name_erases_nothing(house, name):
    with pytest.raises(NameDoesNotMatch):
        erase(house, name)
    assert Farm.objects.within(house.scope).get(pk=house.farm.pk).erased_at is None
    assert Cow.objects.within(house.scope).filter(farm=house.farm).count() == 2


def test_nothing_is_erased_while_somebody_is_at_the_crush(house):
    under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=35))
    with pytest.raises(VisitIsUnderWay):
        erase(house)


def test_what_is_erased_is_not_erased_again(house):
    erase(house)
    with pytest.raises(FarmIsErased):
        erase(house, f"Erased farm {house.farm.pk}")
