"""Every file of a domain, documents or services folder that holds code has its test of the same name."""

import ast
from pathlib import Path

import pytest

from tests.architecture.source_tree import ROOT, layers_of, name_of, product_files, tree_of

LAYERS = ("domain", "documents", "services")


def twin_of(path: Path) -> Path:
    """visits/services/finish_visit.py -> tests/visits/services/test_finish_visit.py"""
    inner = path.relative_to(ROOT)
    return ROOT / "tests" / inner.parent / f"test_{inner.name}"


def holds_code(tree: ast.Module) -> bool:
    """False for a package's mark and for what only names values: it has no behaviour of its own to test."""
    return any(isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) for node in ast.walk(tree))


def files_that_need_a_twin() -> list[Path]:
    return [p for p in product_files() if set(layers_of(p)[:-1]) & set(LAYERS) and holds_code(tree_of(p))]


def test_every_file_that_decides_or_writes_has_its_twin():
    lonely = [name_of(path) for path in files_that_need_a_twin() if not twin_of(path).exists()]
    assert not lonely, "\n".join(["these need a test of the same name:", *lonely])


def test_every_twin_holds_a_test():
    twins = [twin_of(path) for path in files_that_need_a_twin()]
    empty = [name_of(twin) for twin in twins if twin.exists() and "def test_" not in twin.read_text()]
    assert not empty


@pytest.mark.parametrize(
    ("source", "expected"),
    [("def f(): ...", True), ('"""A mark."""', False), ("class Foot(StrEnum):\n    LF = 'LF'", False)],
)
def test_code_is_told_from_a_list_of_names(source, expected):
    assert holds_code(ast.parse(source)) is expected
