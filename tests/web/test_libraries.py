"""Libraries that we serve to the browser are what their publishers made, with their licences beside them."""

import hashlib
import re
from pathlib import Path

from django.conf import settings

FOLDER = Path(settings.BASE_DIR) / "trimops/web/static/trimops/lib"
ROW = re.compile(
    r"^\| (?P<file>[\w.-]+\.js) \| (?P<package>[\w-]+) \| (?P<version>[\d.]+) \| (?P<there>\S+) \| "
    r"(?P<licence>\S+) \| (?P<sha256>[0-9a-f]{64}) \|$",
    re.MULTILINE,
)


def rows():
    return [found.groupdict() for found in ROW.finditer((FOLDER / "SOURCES.md").read_text())]


def test_every_library_is_listed():
    assert {row["file"] for row in rows()} == {path.name for path in FOLDER.glob("*.js")}
    assert len(rows()) >= 2


def test_every_library_is_unchanged():
    for row in rows():
        assert hashlib.sha256((FOLDER / row["file"]).read_bytes()).hexdigest() == row["sha256"], row["file"]


def test_every_licence_stands_beside_its_library_and_is_the_one_that_is_named():
    # What each licence says of itself, or how it begins.
    words = {"BSD-3-Clause": "Redistribution and use in source and binary forms", "ISC": "ISC License"}
    for row in rows():
        text = (FOLDER / f"{row['package']}.LICENSE.txt").read_text()
        assert words[row["licence"]] in text, row["package"]
        assert "opyright" in text
