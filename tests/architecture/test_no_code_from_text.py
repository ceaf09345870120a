"""Nothing runs what came as text: no eval, no shell, no pickle from outside (ASVS 1.2.5, 1.3.2)."""

import ast

import pytest

from tests.architecture.source_tree import name_of, product_files, tree_of

BY_NAME = {"eval", "exec", "compile", "__import__"}
BY_MODULE = {
    "os": {"system", "popen", "execv", "execve", "spawnl", "spawnv"},
    "pickle": {"load", "loads"},
    "marshal": {"load", "loads"},
    "yaml": {"load"},
}


def runs_text(tree: ast.AST) -> list[int]:
    """The lines that do."""
    return [node.lineno for node in ast.walk(tree) if isinstance(node, ast.Call) and _runs_text(node)]


def _runs_text(call: ast.Call) -> bool:
    if any(word.arg == "shell" and not _is_false(word.value) for word in call.keywords):
        return True
    if isinstance(call.func, ast.Name):
        return call.func.id in BY_NAME
    if isinstance(call.func, ast.Attribute) and isinstance(call.func.value, ast.Name):
        return call.func.attr in BY_MODULE.get(call.func.value.id, set())
    return False


def _is_false(value: ast.expr) -> bool:
    return isinstance(value, ast.Constant) and value.value is False


def test_nothing_of_the_product_runs_what_came_as_text():
    found = [f"{name_of(path)}:{line}" for path in product_files() for line in runs_text(tree_of(path))]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("eval(words)", True),
        ("subprocess.run(words, shell=True)", True),
        ("os.system(words)", True),
        ("pickle.loads(words)", True),
        ("re.compile(words)", False),
        ("subprocess.run([words], check=True)", False),
    ],
)
def test_what_runs_text_is_told_from_what_does_not(line, expected):
    assert bool(runs_text(ast.parse(line))) is expected
