"""What decides and writes never sees a request: services, selectors and models import no HTTP."""

import ast

import pytest

from tests.architecture.source_tree import imported_names, layers_of, name_of, product_files, tree_of

HTTP = (
    "django.http",
    "django.shortcuts",
    "django.views",
    "django.forms",
    "rest_framework",
    "django.contrib.messages",
)
LAYERS = ("services", "selectors", "models")


def http_imports(tree: ast.AST) -> list[int]:
    return [line for name, line in imported_names(tree) if name.startswith(HTTP)]


def test_services_selectors_and_models_import_no_http():
    inner = [path for path in product_files() if set(layers_of(path)) & set(LAYERS)]
    found = [f"{name_of(path)}:{line}" for path in inner for line in http_imports(tree_of(path))]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    ("line", "expected"),
    [("from django.http import HttpRequest", True), ("from django.db import models", False)],
)
def test_http_is_told_from_other_imports(line, expected):
    assert bool(http_imports(ast.parse(line))) is expected
