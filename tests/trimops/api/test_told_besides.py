"""A reader of the description is told what each thing means, and shown each body as it is taken."""

import json
import tomllib
from pathlib import Path

import pytest
from django.apps import apps
from django.urls import get_resolver
from jsonschema import Draft202012Validator

from trimops.api.described import FORMATS
from trimops.api.description import DESCRIPTION
from trimops.api.problem_codes import problem_codes
from trimops.api.told_besides import kept_examples

TOLD = json.loads(DESCRIPTION.read_text())
JSON = "application/json"
OPERATIONS = {
    op["operationId"]: (method, path, op)
    for path, each in TOLD["paths"].items()
    for method, op in each.items()
}
OURS = apps.get_app_configs()
FIELDS = [
    (name, field, told)
    for name, schema in TOLD["components"]["schemas"].items()
    for field, told in schema.get("properties", {}).items()
]
TAKEN = [
    name for name, (_, _, op) in OPERATIONS.items() if JSON in op.get("requestBody", {}).get("content", {})
]


def body_of(name):
    return OPERATIONS[name][2]["requestBody"]["content"][JSON]


def test_every_operation_says_what_it_is_and_where_it_belongs():
    said = {name: op for name, (_, _, op) in OPERATIONS.items()}
    assert [name for name, op in said.items() if not (op["summary"] and op["tags"])] == []
    # what is left without the line that names the scope
    bare = [name for name, op in said.items() if len(op["description"].split("\n\nScope: ")[0]) < 15]
    assert bare == []


def test_every_body_has_an_example_and_no_example_is_left_over():
    assert [name for name in TAKEN if "example" not in body_of(name)] == []
    assert kept_examples().keys() - set(TAKEN) == set()


@pytest.mark.parametrize("name", TAKEN)
def test_the_example_is_as_described(name):
    schema = {**body_of(name)["schema"], "components": TOLD["components"]}
    faults = Draft202012Validator(schema, format_checker=FORMATS).iter_errors(body_of(name)["example"])
    assert [f"{list(fault.path)}: {fault.message}" for fault in faults] == []


def test_every_field_and_every_word_of_an_address_is_told():
    bare = [f"{name}.{field}" for name, field, told in FIELDS if not told.get("description")]
    assert bare == []
    shared = TOLD["components"]["parameters"]
    asked = [
        shared[each["$ref"].rpartition("/")[2]] if "$ref" in each else each
        for _, _, op in OPERATIONS.values()
        for each in op.get("parameters", [])
    ]
    assert len(asked) > 500
    assert [each["name"] for each in asked if not each.get("description")] == []


def test_no_word_is_left_over():
    """A field that is gone takes its words with it."""
    fields = {name for _, name, _ in FIELDS}
    makers = {name.removeprefix("Patched").removesuffix("Request") for name, _, _ in FIELDS}
    files = [*DESCRIPTION.parent.glob("words.toml"), *(Path(app.path, "api/words.toml") for app in OURS)]
    for file in filter(Path.exists, files):
        words = tomllib.loads(file.read_text())
        for name in ("path", "query"):
            words.pop(name, None)
        tables = {name for name, says in words.items() if isinstance(says, dict)}
        assert words.keys() - tables - fields == set(), file
        assert tables - makers == set(), file


def test_every_refusal_shows_how_it_reads():
    refusals = TOLD["components"]["responses"]
    shown = {name: each["content"]["application/problem+json"]["example"] for name, each in refusals.items()}
    schema = {**TOLD["components"]["schemas"]["Problem"], "components": TOLD["components"]}
    assert [name for name, each in shown.items() if name != f"Refused{each['status']}"] == []
    assert [
        name for name, each in shown.items() if list(Draft202012Validator(schema).iter_errors(each))
    ] == []
    # because: a rule is known once the addresses that can break it are
    assert get_resolver().url_patterns
    known = {(each.code, each.status) for each in problem_codes()}
    assert {(each["code"], each["status"]) for each in shown.values()} - known == set()
