"""The system check speaks up for each way a model could stand outside the wall."""

import pytest
from django.apps import apps
from django.core.checks import Tags, run_checks
from django.db import models
from django.test.utils import isolate_apps

from farms.models import Farm
from trimops.accounts.models import User
from trimops.tenancy import tables
from trimops.tenancy.checks import faults_of, leads_to_farm
from trimops.tenancy.models import TenantModel
from visits.models import Trim, Visit


def numbers(model):
    return {number for number, _ in faults_of(model)} - {"E007"}  # a model made in a test owns no known table


def plain():
    class Plain(models.Model):
        class Meta:
            app_label = "visits"

    return Plain


def loose_manager():
    class Loose(TenantModel):
        every = models.Manager()

        class Meta:
            app_label = "visits"

    return Loose


def own_base():
    class Own(TenantModel):
        class Meta:
            app_label = "visits"
            base_manager_name = "objects"

    return Own


def astray():
    class Astray(TenantModel):
        farm_path = "business__name"

        class Meta:
            app_label = "visits"

    return Astray


def inheriting():
    class Above(TenantModel):
        class Meta:
            app_label = "visits"

    class Below(Above):
        class Meta:
            app_label = "visits"

    return Below


def linked_by_itself():
    class Linked(TenantModel):
        people = models.ManyToManyField(User, related_name="+")

        class Meta:
            app_label = "visits"

    return Linked


FAULTS = {
    "E001": plain,
    "E002": loose_manager,
    "E003": own_base,
    "E004": astray,
    "E005": inheriting,
    "E006": linked_by_itself,
}


@isolate_apps("visits")
@pytest.mark.parametrize("number", FAULTS)
def test_each_fault_is_told(number):
    assert numbers(FAULTS[number]()) == {number}


def test_a_second_model_over_a_tenant_table_does_not_take_it_over():
    with isolate_apps("visits") as made:

        class Twin(models.Model):
            class Meta:
                app_label = "visits"
                db_table = "visits_visit"

        known = apps.get_models() + list(made.get_models())
        held = {model for model in known if tables.is_tenant_model(model)}
    assert Twin not in held
    assert tables.tenant_tables()["visits_visit"] is Visit


def test_a_link_table_that_django_makes_is_held_too():
    with isolate_apps("visits"):
        through = linked_by_itself().people.through
    assert tables._holds(through)
    assert not tables._holds(User.groups.through)


@isolate_apps("trimops.accounts")
def test_a_shared_table_that_points_at_a_visit_is_not_held():
    class Shared(models.Model):
        visit = models.ForeignKey(Visit, models.CASCADE, related_name="+")

        class Meta:
            app_label = "accounts"

    assert not tables._holds(Shared)


def test_the_models_of_the_project_have_no_fault():
    assert [fault for fault in run_checks(tags=[Tags.models]) if str(fault.id).startswith("tenancy.")] == []


def test_the_check_is_registered(monkeypatch):
    monkeypatch.setattr(Visit, "holds_rows_of_a_business", False)
    assert "tenancy.E001" in {fault.id for fault in run_checks(tags=[Tags.models])}


@pytest.mark.parametrize(
    ("model", "path", "leads"),
    [
        (Farm, "id", True),
        (Farm, "pk", True),
        (Visit, "farm", True),
        (Visit, "farm_id", True),
        (Visit, "farm__id", True),
        (Trim, "visit__farm_id", True),
        (Trim, "visit", False),
        (Visit, "id", False),
        (Visit, "business_id", False),
        (Visit, "farm__name", False),
        (Visit, "barn", False),
        (Farm, "visits__farm", False),
    ],
)
def test_a_path_leads_to_the_one_farm_or_not(model, path, leads):
    assert leads_to_farm(model, path) is leads
