"""Each dependency says what it is needed for, each silenced rule says because of what."""

import re

import pytest

from tests.architecture.source_tree import ROOT

PYPROJECT = (ROOT / "pyproject.toml").read_text().splitlines()
REQUIREMENT = re.compile(r'^    "[A-Za-z0-9_.\-\[\]]+(?:[<>=!~].*)?",?$')


def block(starts_with: str) -> list[str]:
    """The lines after the one that starts so, up to the closing bracket at the margin."""
    begin = next(i for i, line in enumerate(PYPROJECT) if line.startswith(starts_with))
    end = next(i for i, line in enumerate(PYPROJECT[begin:], begin) if line == "]")
    return PYPROJECT[begin + 1 : end]


def unexplained(lines: list[str]) -> list[str]:
    """Requirements that no "needed for" stands above; one may speak for the lines that follow it."""
    found, is_explained = [], False
    for line in lines:
        if line.strip().startswith("#"):
            is_explained = "needed for:" in line
        elif REQUIREMENT.match(line) and not is_explained:
            found.append(line.strip())
    return found


@pytest.mark.parametrize("start", ["dependencies = [", "dev = ["])
def test_each_dependency_says_what_it_is_needed_for(start):
    lines = block(start)
    assert [line for line in lines if REQUIREMENT.match(line)]
    assert not unexplained(lines)


def test_a_dependency_without_a_reason_is_seen():
    assert unexplained(['    "django>=5.2,<5.3",', "    # needed for: tests", '    "pytest",']) == [
        '"django>=5.2,<5.3",'
    ]


def test_each_silenced_rule_says_why():
    lines = block("ignore = [")
    assert lines
    assert all("# because:" in line for line in lines)
    after = PYPROJECT[PYPROJECT.index("[tool.ruff.lint.per-file-ignores]") + 1 :]
    per_file = after[: after.index("")]
    assert all("# because:" in line for line in per_file)
