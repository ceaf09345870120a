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
from invoicing.models import (
    Allocation,
    DocumentAmount,
    Invoice,
    InvoiceLine,
    InvoicePapers,
    Payment,
)
from tests.factories import NOON, TUESDAY_TEN, let_in, make_farm, under_way, wanted
from tests.trimops.portal.services.known_farm import WORDS, known_farm
from trimops.accounts.models import User
from trimops.kernel.scope import Scope
from trimops.portal.services.erase_farm import NameDoesNotMatch, VisitIsUnderWay, erase_farm
from trimops.tenancy.tables import is_tenant_model
from trimops.tenancy.unscoped import unscoped
from visits.models import LearnedLengths, RoadLeg, StockMovement, Visit, WeekPlan
from visits.services.visit_change import add_event

BOOKS = {Invoice, InvoiceLine, InvoicePapers, DocumentAmount}
STAYS = {Farm, Visit, Erasure, Payment, Allocation} | BOOKS
"""What hangs on a farm and stays: the bare farm, its invoices, the bare visits they hang on, the wish."""
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
    assert done.outcome["kept"] == {"invoices": 1, "visits without words": 1}
    assert done.outcome["erased"]["cows"] == 2
    assert done.outcome["erased"]["photos"] == 2
    assert done.outcome["erased"]["drafts of invoices"] == 1
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


def test_the_stock_ledger_keeps_its_lines(house):
    lines = StockMovement.objects.within(house.scope).count()
    assert StockMovement.objects.within(house.scope).filter(trim__isnull=False).exists()
    erase(house)
    assert StockMovement.objects.within(house.scope).count() == lines
    assert not StockMovement.objects.within(house.scope).filter(trim__isnull=False).exists()


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
