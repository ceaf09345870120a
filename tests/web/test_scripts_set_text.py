"""Our scripts put text into a page as text, and run none of it (ASVS 3.2.2)."""

import re
from pathlib import Path

import pytest
from django.conf import settings

RUNS = re.compile(
    r"\b(?:innerHTML|outerHTML|insertAdjacentHTML|document\.write|unsafeHTML|unsafeSVG|createContextualFragment)\b"
    r"|\beval\(|\bnew Function\(|\bset(?:Timeout|Interval)\(\s*[\"'`]"
)
ROOT = Path(settings.BASE_DIR)


def scripts():
    """All of ours: what lies below `lib/` is others', pinned by its hash."""
    found = [
        path for app in ("trimops", "visits", "farms", "invoicing") for path in (ROOT / app).rglob("*.js")
    ]
    return [path for path in found if "lib" not in path.parts]


def test_no_script_makes_html_or_code_of_a_text():
    assert len(scripts()) > 50
    assert not [str(path) for path in scripts() if RUNS.search(path.read_text(encoding="utf-8"))]


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("box.innerHTML = words", True),
        ("eval(words)", True),
        ('setTimeout("go()", 5)', True),
        ("box.textContent = words", False),
        ("setTimeout(go, 5)", False),
        ("retrieval(words)", False),
    ],
)
def test_what_does_is_told_from_what_does_not(line, expected):
    assert bool(RUNS.search(line)) is expected
