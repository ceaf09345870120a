"""A file bears the name of its use case; names that grow without end, and `Any`, have no place."""

import ast
import re

from tests.architecture.source_tree import imported_names, name_of, product_files, tree_of

ENDLESS = {"utils", "util", "helpers", "helper", "common", "managers", "misc", "signals"}


def test_no_file_has_a_name_that_grows_without_end():
    assert not [name_of(path) for path in product_files() if path.stem in ENDLESS]


def test_any_stands_only_where_rows_are_locked_and_where_the_api_is_described():
    """Django's compilers and the library that describes an API publish no types to go by."""
    wanted = [
        path
        for path in product_files()
        if "tenancy" not in path.parts and not name_of(path).startswith(("trimops/api/", "trimops/client/"))
    ]
    found = [
        f"{name_of(path)}:{line}"
        for path in wanted
        for name, line in imported_names(tree_of(path))
        if name == "typing.Any"
    ]
    assert not found, "\n".join(found)


def test_a_silenced_line_says_which_rule_it_silences():
    bare = re.compile(r"#\s*(noqa|type:\s*ignore)(?![:\[])")
    found = [name_of(path) for path in product_files() if bare.search(path.read_text())]
    assert not found


# because: its names are the ids that the job's function is handed
IDS_BY_NAME = {"trimops/errands/services/enqueue.py"}


def test_a_service_is_called_with_names_only():
    """The function that a services file is named after takes keyword-only arguments."""
    found = [
        f"{name_of(path)}:{node.lineno}"
        for path in product_files()
        if "services" in path.parts and name_of(path) not in IDS_BY_NAME
        for node in tree_of(path).body
        if isinstance(node, ast.FunctionDef)
        and node.name == path.stem
        and (node.args.args or node.args.posonlyargs)
    ]
    assert not found, "\n".join(found)
