"""Which files the crush page is made of, and the version that they make together."""

import hashlib
from collections.abc import Iterator
from pathlib import Path

from django.contrib.staticfiles import finders
from django.template.loader import render_to_string
from django.templatetags.static import static

# All below these folders, found anew each time: a new module is part of the page by lying there.
FOLDERS = ("visits/crush", "trimops/lib")
KINDS = frozenset({".js", ".css", ".svg"})
SINGLE = (
    "trimops/trimops.css",
    "trimops/theme.js",
    "trimops/fonts/atkinson-regular.woff2",
    "trimops/fonts/atkinson-bold.woff2",
)
SHELL = "visits/crush_app.html"


def crush_files() -> list[str]:
    """Paths below the static address, sorted."""
    return sorted([*SINGLE, *(path for folder in FOLDERS for path in _below(folder))])


def crush_modules() -> list[str]:
    """Those of them that the page asks for all at once; else each would be asked for when another one names it."""
    return [path for path in crush_files() if path.endswith(".js") and path not in SINGLE]


def file_of(path: str) -> Path:
    """Where that file lies."""
    found = finders.find(path)
    if not isinstance(found, str):
        raise FileNotFoundError(path)
    return Path(found)


def crush_version() -> str:
    """Twelve hex digits that change with any of the files, the page or their addresses."""
    parts = [render_to_string(SHELL).encode()]
    for path in crush_files():
        parts += [static(path).encode(), file_of(path).read_bytes()]
    digests = (hashlib.sha256(part).digest() for part in parts)
    return hashlib.sha256(b"".join(digests)).hexdigest()[:12]


def _below(folder: str) -> Iterator[str]:
    root = file_of(folder)
    for path in root.rglob("*"):
        if path.suffix in KINDS:
            yield f"{folder}/{path.relative_to(root).as_posix()}"
