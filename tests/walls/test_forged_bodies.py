"""No body of the API names a row of another business, or of another farm where a farm client asks."""

import json
import logging

import pytest
from django.test import Client
from django.urls import reverse
from rest_framework.exceptions import ValidationError
from rest_framework.fields import ListField
from rest_framework.serializers import BaseSerializer, ListSerializer

from tests.walls.routes import API, every_pattern
from trimops.api.rows import RowField
from trimops.api.view import Api
from trimops.kernel.scope import Scope


@pytest.fixture(autouse=True)
def _quiet(caplog):
    """Refusals are expected here; only what breaks is to be read."""
    caplog.set_level(logging.CRITICAL, logger="django.request")


def operations():
    """(name of the address, method, what it takes) of each operation that takes something."""
    for pattern in every_pattern():
        view = getattr(pattern.callback, "cls", None)
        if view is not None and issubclass(view, Api):
            yield from (
                (pattern.name, method, op.takes)
                for method, op in view.ops.items()
                if isinstance(op.takes, type)
            )


def row_fields(field, path=()):
    """Each field of a body that names a row, however deep, with the way to it."""
    if isinstance(field, RowField):
        yield path, field
    elif isinstance(field, ListSerializer | ListField):
        yield from row_fields(field.child, (*path, 0))
    elif isinstance(field, BaseSerializer):
        for name, each in field.fields.items():
            if not each.read_only:
                yield from row_fields(each, (*path, name))


NAMING = [
    (name, method, takes)
    for name, method, takes in operations()
    if next(row_fields(takes()), None) is not None
]


def key_of(model, scope):
    return model._default_manager.all().within(scope).values_list("pk", flat=True).order_by("pk").last()


@pytest.mark.parametrize(("name", "method", "takes"), NAMING, ids=[f"{n}-{m}" for n, m, _ in NAMING])
def test_a_row_of_others_is_not_there_for_any_field_that_names_one(name, method, takes, mine, theirs, db):
    """An own row is taken by the same field, so that it is the wall that refuses."""
    for path, field in row_fields(takes(context={"scope": mine.house.scope})):
        own, foreign = (key_of(field.model, each.house.scope) for each in (mine, theirs))
        if own is None:
            assert foreign is None, path
            continue
        assert field.to_internal_value(own).pk == own, path
        with pytest.raises(ValidationError, match="There is no such"):
            field.to_internal_value(foreign)


def test_the_other_farm_of_a_business_is_not_there_for_a_farm_client(mine, db):
    client = Scope(mine.house.business.pk, mine.keys["farm"])
    models = {field.model for _, _, takes in NAMING for _, field in row_fields(takes())}
    tried = 0
    for model in models:
        seen = set(model._default_manager.all().within(client).values_list("pk", flat=True))
        rest = set(model._default_manager.all().within(mine.house.scope).values_list("pk", flat=True)) - seen
        for _, field in row_fields(_one_of(model)(context={"scope": client})):
            if field.model is model and rest:
                tried += 1
                with pytest.raises(ValidationError, match="There is no such"):
                    field.to_internal_value(max(rest))
    assert tried


def _one_of(model):
    return next(
        takes for _, _, takes in NAMING if any(field.model is model for _, field in row_fields(takes()))
    )


CHANGES = [(name, takes) for name, method, takes in NAMING if method == "patch"]


@pytest.mark.parametrize(("name", "takes"), CHANGES, ids=[name for name, _ in CHANGES])
def test_a_change_that_names_a_row_of_others_is_refused_and_says_where(name, takes, mine, theirs, db):
    client = Client(headers={"If-Match": "*"})
    client.force_login(mine.house.owner)
    address = reverse(name, kwargs=API[name].parts(mine.keys))
    for path, field in row_fields(takes()):
        foreign = key_of(field.model, theirs.house.scope)
        if len(path) > 1 or foreign is None:
            continue
        answer = client.patch(address, json.dumps({path[0]: foreign}), "application/json")
        assert answer.status_code == 422, answer.content
        assert [fault["field"] for fault in answer.json()["faults"]] == [path[0]]
