"""Views, API, tasks and commands call services; they never write a row themselves."""

import ast

import pytest

from tests.architecture.source_tree import is_shell, name_of, product_files, tree_of

WRITES = {"save", "create", "update", "delete", "get_or_create", "update_or_create", "set_password", "raw"}
# `update` and `set` of plain values look the same to a reader of syntax: a context or a header is no row.
PLAIN_HOLDERS = {"context", "headers", "params", "data", "kwargs", "environ", "env", "attrs", "seen", "bar"}


def is_write(call: ast.Call) -> bool:
    function = call.func
    if not isinstance(function, ast.Attribute):
        return False
    if function.attr not in WRITES and not function.attr.startswith("bulk_"):
        return False
    return last_name(function.value) not in PLAIN_HOLDERS and not is_super(function.value)


def last_name(node: ast.expr) -> str:
    if isinstance(node, ast.Attribute):
        return node.attr
    return node.id if isinstance(node, ast.Name) else ""


def is_super(node: ast.expr) -> bool:
    return isinstance(node, ast.Call) and last_name(node.func) == "super"


def writes_in(tree: ast.AST) -> list[int]:
    return [node.lineno for node in ast.walk(tree) if isinstance(node, ast.Call) and is_write(node)]


def test_shells_never_write():
    shells = [path for path in product_files() if is_shell(path)]
    found = [f"{name_of(path)}:{line}" for path in shells for line in writes_in(tree_of(path))]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("visit.save()", True),
        ("Visit.objects.within(scope).update(state='done')", True),
        ("Cow.objects.bulk_create(cows)", True),
        ("form.save()", True),
        ("context.update(rows=rows)", False),
        ("finish_visit(visit=visit)", False),
    ],
)
def test_a_write_is_told_from_other_calls(line, expected):
    assert bool(writes_in(ast.parse(line))) is expected
