"""The product's source files, read and parsed once for the tests of the house rules."""

import ast
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
PACKAGES = ("trimops", "farms", "visits", "invoicing")
APPS = ("farms", "visits", "invoicing")
SHELLS = ("web", "api", "tasks", "management", "templatetags")


@cache
def product_files() -> tuple[Path, ...]:
    """Every Python file that we wrote for the product: no tests, no migrations."""
    found = [path for package in PACKAGES for path in (ROOT / package).rglob("*.py")]
    return tuple(sorted(path for path in found if "migrations" not in path.parts))


@cache
def tree_of(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"), filename=str(path))


@cache
def nodes_of(path: Path) -> tuple[ast.AST, ...]:
    """All nodes of a file's tree, walked once for all who look through them."""
    return tuple(ast.walk(tree_of(path)))


def name_of(path: Path) -> str:
    """The path as a reader would say it, from the project's top."""
    return path.relative_to(ROOT).as_posix()


def layers_of(path: Path) -> tuple[str, ...]:
    """The names between the package and the file's end, the file's own name among them, without `.py`."""
    inner = path.relative_to(ROOT).with_suffix("")
    return inner.parts[1:]


def is_shell(path: Path) -> bool:
    """True for what speaks to the outside: views, API, tasks, commands; of an app or of the ground."""
    layers = layers_of(path)
    # because: the ground of the API has services of its own, and what they write is theirs to write
    return any(part in SHELLS for part in layers) and layers[:2] != ("api", "services")


def functions_of(path: Path) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    return [n for n in nodes_of(path) if isinstance(n, ast.FunctionDef | ast.AsyncFunctionDef)]


@cache
def imported_names(tree: ast.AST) -> list[tuple[str, int]]:
    """(dotted name, line) of all that a file imports; `from a import b` counts as `a.b`."""
    names: list[tuple[str, int]] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names += [(alias.name, node.lineno) for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            names += [(f"{node.module}.{alias.name}", node.lineno) for alias in node.names]
        elif isinstance(node, ast.Call) and _is_import_call(node):
            names.append((str(ast.literal_eval(node.args[0])), node.lineno))
    return names


def _is_import_call(call: ast.Call) -> bool:
    """`import_module("name")`: an engine that is loaded only when it is needed is imported all the same."""
    name = call.func.attr if isinstance(call.func, ast.Attribute) else getattr(call.func, "id", "")
    return name == "import_module" and bool(call.args) and isinstance(call.args[0], ast.Constant)
