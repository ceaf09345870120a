"""A system check: no model of the three apps escapes the wall, and what the lock relies on is so."""

from collections.abc import Iterator
from typing import Any

from django.apps import apps
from django.core.checks import Error
from django.core.exceptions import FieldError
from django.db.models import Model
from django.db.models.sql import Query

from trimops.tenancy.kin import KinManager
from trimops.tenancy.querysets import TenantQuerySet
from trimops.tenancy.tables import is_tenant_model, tenant_tables

WALLED_APPS = ("farms", "visits", "invoicing")
FARM = "farms.Farm"


def every_model_is_walled(**_: Any) -> list[Error]:
    """One Error for each fault of a model of farms, visits and invoicing, or of any other tenant model."""
    return [
        Error(said, obj=model, id=f"tenancy.{number}")
        for model in apps.get_models()
        if is_tenant_model(model) or model._meta.app_label in WALLED_APPS
        for number, said in faults_of(model)
    ]


def faults_of(model: Any) -> Iterator[tuple[str, str]]:
    """Pairs of a check's number and what is wrong with the model, in words."""
    if not is_tenant_model(model):
        yield "E001", "Subclass TenantModel."
        return
    if not all(isinstance(manager.get_queryset(), TenantQuerySet) for manager in model._meta.managers):
        yield "E002", "Each of its managers must come from a TenantQuerySet."
    if type(model._base_manager) is not KinManager or model._meta.base_manager_name:
        yield "E003", "Its base manager must be the one TenantModel gives it; drop Meta.base_manager_name."
    if model.farm_path is not None and not leads_to_farm(model, model.farm_path):
        yield "E004", f"farm_path {model.farm_path!r} leads to no farm's key, or to many."
    if model._meta.parents and not model._meta.proxy:
        yield "E005", "It inherits another table; Django updates that one by key alone. Link it instead."
    for field in model._meta.local_many_to_many:
        if field.remote_field.through._meta.auto_created:
            yield "E006", f"{field.name}: give the link a TenantModel of its own (through=...)."
    if tenant_tables().get(model._meta.db_table) is not model._meta.concrete_model:
        yield "E007", f"Another model claims its table {model._meta.db_table}."


def leads_to_farm(model: type[Model], path: str) -> bool:
    """Whether `path`, an ORM lookup without a transform, ends at the one farm of each row."""
    query: Any = Query(model)
    try:
        steps, _, targets, _ = query.names_to_path(path.split("__"), model._meta, fail_on_missing=True)
    except FieldError:
        return False
    return targets == (apps.get_model(FARM)._meta.pk,) and not any(step.m2m for step in steps)
