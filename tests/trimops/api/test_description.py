"""The kept description is what the code says, and is what the standard calls one."""

import json

from django.test import Client
from openapi_spec_validator import OpenAPIV31SpecValidator

from trimops.api.description import DESCRIPTION, description_text


def test_the_kept_description_is_what_the_code_says():
    assert DESCRIPTION.read_text() == description_text(), "run: manage.py describe_api"


def test_it_is_one_by_the_standard():
    """OpenAPI 3.1 by openapi-spec-validator, which nobody here wrote."""
    OpenAPIV31SpecValidator(json.loads(DESCRIPTION.read_text())).validate()


def test_every_operation_has_an_id_of_its_own_and_a_scope():
    paths = json.loads(DESCRIPTION.read_text())["paths"]
    told = [(op["operationId"], op["description"]) for each in paths.values() for op in each.values()]
    assert len({name for name, _ in told}) == len(told)
    assert [name for name, text in told if "Scope: `" not in text] == []


def test_it_is_open_to_all_without_the_database():
    answer = Client().get("/api/v1/openapi.json")
    assert (answer.status_code, answer["Content-Type"]) == (200, "application/json")
    assert answer.json()["openapi"] == "3.1.0"
