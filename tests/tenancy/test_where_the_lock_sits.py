"""The lock is under every compiler, leaves migrations and shared tables alone, and guards what is written."""

import pytest
from django.apps import apps
from django.db import connection
from django.db.migrations.state import ModelState, ProjectState

from farms.models import Contact, Farm
from trimops.accounts.models import Membership, User
from trimops.tenancy.errors import MixedBusinesses, ScopeRequired
from trimops.tenancy.lock import _Locked, fit_lock
from trimops.tenancy.marks import proven_scopes
from trimops.tenancy.tables import is_tenant_model
from visits.models import Visit

COMPILERS = [
    "SQLCompiler",
    "SQLInsertCompiler",
    "SQLDeleteCompiler",
    "SQLUpdateCompiler",
    "SQLAggregateCompiler",
]


@pytest.mark.parametrize("name", COMPILERS)
def test_every_compiler_is_handed_out_locked_and_once(name):
    fit_lock()
    compiler = connection.ops.compiler(name)
    assert compiler.__mro__.count(_Locked) == 1
    assert compiler is connection.ops.compiler(name)


def test_tables_that_all_share_are_free(world):
    assert User.objects.filter(memberships__business__name="x").count() == 0
    assert list(Membership.objects.select_related("user", "business")) == []


def test_the_frozen_models_of_a_migration_are_free(world):
    frozen = ProjectState.from_apps(apps).apps.get_model("visits", "Visit")
    assert frozen.objects.count() == 4
    assert frozen.objects.filter(farm__name="Low Croft").update(note="x") == 2


@pytest.mark.parametrize(
    "model", [m for m in apps.get_models() if is_tenant_model(m)], ids=lambda m: m.__name__
)
def test_no_migration_carries_our_managers(model):
    state = ModelState.from_model(model)
    assert state.managers == []
    assert "base_manager_name" not in state.options


def test_a_scope_stays_with_its_query_through_every_change(world):
    rows = (
        Visit.objects.within(world.mine.scope).filter(trims__note="").exclude(note="x").order_by("farm__name")
    )
    query = rows.values("note").query.chain()
    assert proven_scopes(query.where, "visits_visit", "visits_visit") == {world.mine.scope}
    assert proven_scopes(query.where, "visits_visit", "farms_farm") == frozenset()


def test_a_new_row_cannot_hang_on_a_row_of_another_business(world):
    with pytest.raises(MixedBusinesses):
        Contact.objects.create(business=world.mine.business, farm=world.theirs.farm, name="x", part="vet")
    stray = Contact(business=world.mine.business, farm=world.theirs.farm, name="x", part="vet")
    with pytest.raises(MixedBusinesses):
        Contact.objects.bulk_create([stray])


def test_a_saved_row_cannot_be_hung_on_a_row_of_another_business(world):
    visit = Visit.objects.within(world.mine.scope).first()
    visit.farm = world.theirs.farm
    with pytest.raises(MixedBusinesses):
        visit.save()


MOVES = {
    "the business": lambda w, rows: rows.update(business=w.theirs.business),
    "the business by its key": lambda w, rows: rows.update(business_id=w.theirs.business.pk),
    "a parent": lambda w, rows: rows.update(farm=w.theirs.farm),
    "in bulk": lambda w, rows: rows.bulk_update(rows, ["business"]),
}


@pytest.mark.parametrize("move", MOVES)
def test_an_update_hands_nothing_to_another_business(world, move):
    rows = Visit.objects.within(world.mine.scope)
    with pytest.raises(MixedBusinesses):
        MOVES[move](world, rows)


def test_an_upsert_within_the_business_is_free(world):
    farm = world.mine.farm
    twin = Farm(business=farm.business, name=farm.name, latitude=2, longitude=2, herd_size=99)
    Farm.objects.bulk_create(
        [twin], update_conflicts=True, unique_fields=["business", "name"], update_fields=["herd_size"]
    )
    assert Farm.objects.within(world.mine.scope).get(pk=farm.pk).herd_size == 99


def test_the_refusal_names_the_table_and_the_door(world):
    with pytest.raises(ScopeRequired, match=r"visits_visit.*Visit\.objects\.within\(scope\)"):
        list(Visit.objects.all())
