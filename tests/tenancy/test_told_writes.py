"""Whatever way a row is written, who asked for it is told: before and after, in the same transaction."""

from decimal import Decimal

import pytest
from django.db import DatabaseError, connection, transaction
from django.db.models import F
from django.db.models.functions import Now

from farms.models import Contact, Cow, Farm, Payer
from trimops.accounts.models import Business
from trimops.audit.audited import AUDITED
from trimops.tenancy import told_writes
from trimops.tenancy.told_writes import tell_writes, told_models
from visits.models import Visit

pytestmark = pytest.mark.django_db


@pytest.fixture
def told(monkeypatch):
    """Every row of a farm, cow, contact, visit or payer that is written, as (model, before, after)."""
    monkeypatch.setattr(told_writes, "_wanted", {})
    found = []

    def note(model, rows, using):
        found.extend((model.__name__, row.before, row.after) for row in rows)

    for model in (Farm, Cow, Contact, Visit, Payer):
        tell_writes(model, note, always=["business_id"])
    return found


def test_a_row_saved_for_the_first_time_is_told_whole_and_with_its_key(told, world):
    cow = Cow.objects.create(business=world.mine.business, farm=world.mine.farm, number="7")
    ((name, before, after),) = told
    assert (name, before) == ("Cow", None)
    assert (after["id"], after["number"], after["farm_id"]) == (cow.pk, "7", world.mine.farm.pk)


def test_of_a_change_only_what_the_statement_set_is_told(told, world):
    cow = world.mine.cow
    cow.note = "Kicks"
    cow.save(update_fields=["note"])
    assert told == [
        (
            "Cow",
            {"id": cow.pk, "business_id": cow.business_id, "note": ""},
            {"id": cow.pk, "business_id": cow.business_id, "note": "Kicks"},
        )
    ]


def test_many_rows_at_once_are_told_one_by_one(told, world):
    farm = world.mine.farm
    made = Contact.objects.bulk_create(
        Contact(business=farm.business, farm=farm, name=name, part="herd") for name in ("A", "B")
    )
    assert all(contact.pk for contact in made)
    assert [(name, after["name"], after["id"]) for name, _, after in told] == [
        ("Contact", "A", made[0].pk),
        ("Contact", "B", made[1].pk),
    ]
    told.clear()
    for contact in made:
        contact.name += "!"
    Contact.objects.within(world.mine.scope).bulk_update(made, ["name"])
    assert [(before["name"], after["name"]) for _, before, after in told] == [("A", "A!"), ("B", "B!")]


def test_an_update_by_a_condition_over_a_join_tells_every_row_it_reached(told, world):
    rows = Visit.objects.within(world.mine.scope).filter(farm__name=world.mine.farm.name)
    assert rows.update(note="Wet yard") == 1
    assert [(before["note"], after["note"]) for _, before, after in told] == [("", "Wet yard")]


def test_what_the_database_reckons_itself_is_told_as_it_came_out(told, world):
    farms = Farm.objects.within(world.mine.scope).filter(pk=world.mine.farm.pk)
    farms.update(herd_size=F("herd_size") + 5, latitude=Decimal("2.5"), shown_since=Now())
    ((_, before, after),) = told
    assert after["herd_size"] == before["herd_size"] + 5
    assert after["latitude"] == Decimal("2.5")
    assert after["shown_since"] is not None


def test_a_delete_tells_what_was_there_and_what_went_with_it(told, world):
    farm = world.mine.farm
    contact = Contact.objects.create(business=farm.business, farm=farm, name="A", part="herd")
    told.clear()
    contact.delete()
    Contact.objects.within(world.mine.scope).filter(name="nobody").delete()
    assert [(name, before["name"], after) for name, before, after in told] == [("Contact", "A", None)]


def test_a_delete_by_a_condition_over_a_join_is_told(told, world):
    farm = world.mine.farm
    Contact.objects.create(business=farm.business, farm=farm, name="A", part="herd")
    told.clear()
    there = Contact.objects.within(world.mine.scope).filter(farm__name=farm.name)
    names = sorted(contact.name for contact in there)
    assert there.delete()[0] == len(names) >= 1
    assert sorted(before["name"] for _, before, _ in told) == names


def test_rows_that_were_there_already_are_not_told_as_added(told, world):
    payer = world.mine.payer
    again = Payer(pk=payer.pk, business=payer.business, name="Again")
    new = Payer(business=payer.business, name="New")
    Payer.objects.bulk_create([again], ignore_conflicts=True)
    Payer.objects.bulk_create([new], ignore_conflicts=True)
    assert [after["name"] for _, _, after in told] == ["New"]


def test_an_upsert_tells_what_it_overwrote_and_what_it_added(told, world):
    old = world.mine.farm
    rows = [
        Farm(business=old.business, name=name, latitude=2, longitude=2, herd_size=99)
        for name in (old.name, "Newly Croft")
    ]
    Farm.objects.bulk_create(
        rows, update_conflicts=True, unique_fields=["business", "name"], update_fields=["herd_size"]
    )
    (_, was, now), (_, nothing, new) = told
    assert (was["id"], was["herd_size"], now["herd_size"]) == (old.pk, old.herd_size, 99)
    assert (nothing, new["name"]) == (None, "Newly Croft")


def test_what_is_not_wanted_is_not_read(told, world, monkeypatch):
    monkeypatch.setattr(told_writes, "_wanted", {})
    tell_writes(Cow, lambda model, rows, using: told.extend(rows), always=["farm_id"], never=["note"])
    cow = Cow.objects.create(business=world.mine.business, farm=world.mine.farm, number="9", note="secret")
    cow.note = "other"
    cow.save(update_fields=["note"])
    added, changed = told
    assert "note" not in added.after
    assert changed.after == {"id": cow.pk, "farm_id": cow.farm_id}


def test_what_is_not_asked_for_costs_no_statement(told, world, django_assert_num_queries):
    van = world.mine.van
    with django_assert_num_queries(1):
        van.save(update_fields=["name"])
    with django_assert_num_queries(2):
        world.mine.cow.save(update_fields=["note"])


def test_if_telling_fails_nothing_was_written(world, monkeypatch):
    monkeypatch.setattr(told_writes, "_wanted", {})

    def refuse(model, rows, using):
        raise DatabaseError("full")

    tell_writes(Cow, refuse, always=[])
    with pytest.raises(DatabaseError), transaction.atomic():
        Cow.objects.within(world.mine.scope).update(note="x")
    assert not Cow.objects.within(world.mine.scope).filter(note="x").exists()


@pytest.mark.django_db(transaction=True)
def test_outside_a_transaction_writing_and_telling_are_one(monkeypatch):
    monkeypatch.setattr(told_writes, "_wanted", {})
    inside = []
    tell_writes(Business, lambda *_: inside.append(connection.in_atomic_block), always=[])
    Business.objects.bulk_create([Business(name="A", address="x")])
    Business.objects.update(phone="1")
    assert inside == [True, True]


def test_everything_that_the_trail_keeps_is_told():
    assert {model._meta.label_lower for model in told_models()} == set(AUDITED)
