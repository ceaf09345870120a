"""The top of the tree holds what the map of DEVELOPERS.md shows; all else begins with a dot or is ignored."""

from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

import pytest

from tests.architecture.source_tree import PACKAGES, ROOT

ALLOWED = {
    *PACKAGES,
    *(
        "README.md",
        "DEVELOPERS.md",
        "Makefile",
        "manage.py",
        "pyproject.toml",
        "uv.lock",
        "tests",
        "fixtures",
    ),
}
IGNORED = [
    line.strip().rstrip("/") for line in (ROOT / ".gitignore").read_text().splitlines() if line.strip()
]


def is_ignored(path: Path) -> bool:
    return any(fnmatch(path.name, pattern) for pattern in IGNORED)


def shown(folder: Path) -> Iterator[Path]:
    """The files of the project: a folder that is ignored, or begins with a dot, hides what it holds."""
    for path in folder.iterdir():
        if is_ignored(path) or path.name.startswith("."):
            continue
        if path.is_dir():
            yield from shown(path)
        else:
            yield path


def test_the_top_of_the_tree_holds_only_what_the_map_shows():
    top = {path.relative_to(ROOT).parts[0] for path in shown(ROOT)}
    assert not top - ALLOWED


def test_no_file_is_larger_than_a_picture():
    """A megabyte and a half is enough for the lock file and a screenshot; data is generated, not kept."""
    assert not [path for path in shown(ROOT) if path.stat().st_size > 1_500_000]


@pytest.mark.parametrize(
    ("name", "expected"), [("demo-output", True), ("a.sqlite3", True), ("visits", False)]
)
def test_what_git_ignores_is_told_from_the_rest(name, expected):
    assert is_ignored(ROOT / name) is expected
