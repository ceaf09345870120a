"""A table leaves the house by one of two writers, which keep a spreadsheet from running what stands in a cell."""

import ast

import pytest

from tests.architecture.source_tree import name_of, nodes_of, product_files

WRITERS = {
    "visits/documents/csv_file.py": "every CSV: formulas are kept from running",
    "visits/documents/spreadsheet.py": "every spreadsheet: text is stored as text",
    "visits/web/kit/read_in_form.py": "shown in a text field of the page, and read by us again",
}


def _writes(node: ast.AST) -> bool:
    if isinstance(node, ast.ImportFrom):
        return node.module == "openpyxl" and "Workbook" in {alias.name for alias in node.names}
    is_csv = isinstance(node, ast.Attribute) and getattr(node.value, "id", "") == "csv"
    return is_csv and node.attr in ("writer", "DictWriter")


def test_no_other_file_writes_a_table():
    found = {name_of(path) for path in product_files() if any(map(_writes, nodes_of(path)))}
    assert found == set(WRITERS)


@pytest.mark.parametrize(
    ("source", "writes"),
    [
        ("import csv\ncsv.writer(out)", True),
        ("import csv\ncsv.DictWriter(out, [])", True),
        ("from openpyxl import Workbook", True),
        ("import csv\ncsv.reader(file)", False),
        ("from openpyxl import load_workbook", False),
    ],
)
def test_the_search_finds_what_it_looks_for(source, writes):
    assert any(map(_writes, ast.walk(ast.parse(source)))) is writes
