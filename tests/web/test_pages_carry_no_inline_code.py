"""The content security policy allows neither inline script nor inline style, and nothing from outside."""

import re
from pathlib import Path

import pytest
from django.conf import settings

ROOT = Path(settings.BASE_DIR)
TEMPLATES = sorted(
    path
    for app in ("trimops", "farms", "visits", "invoicing")
    for path in (ROOT / app).rglob("templates/**/*.html")
)
STYLES = sorted((ROOT / "trimops/web/static").rglob("*.css"))
# A block of JSON is data that no browser runs, whatever the policy says.
INLINE = re.compile(
    r"\sstyle=|<style|<script(?![^>]*\s(?:src=|type=\"application/json\"))|\son[a-z]+=|javascript:|(?:src|href)=\"(?:https?:)?//",
    re.I,
)


def test_there_are_templates_to_look_at():
    assert len(TEMPLATES) > 30


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.name)
def test_a_template_has_no_inline_script_or_style_and_fetches_nothing(path):
    assert INLINE.findall(path.read_text()) == []


@pytest.mark.parametrize(
    "bad", ['<p style="x">', "<script>1</script>", '<a onclick="x">', '<img src="//cdn/x">']
)
def test_the_search_finds_what_it_looks_for(bad):
    assert INLINE.search(bad)


@pytest.mark.parametrize("path", STYLES, ids=lambda path: path.name)
def test_the_stylesheet_fetches_only_files_that_stand_beside_it(path):
    for address in re.findall(r"url\(\"?([^)\"]+)", path.read_text()):
        assert (path.parent / address).is_file()
