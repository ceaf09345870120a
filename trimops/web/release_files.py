"""The look, scripts and fonts as a release: below an address that names their contents, compressed, kept for good.

`/static/r-<hash of all files>/trimops/trimops.css`: the folder bears the hash, not each file. A module that asks for
`./store.js` gets it from the same release by itself, so no file is rewritten and none is read twice under two names
(Django's manifest storage hashes each file and would have to rewrite every import; it does not see those whose
address stands in a constant). Chosen by TRIMOPS_COLLECTED; `manage.py collectstatic` makes the folder.
"""

import hashlib
import shutil
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from django.conf import settings
from django.contrib.staticfiles.finders import get_finders
from whitenoise.storage import CompressedStaticFilesStorage

# Pages that are open while a new version comes go on with the files of theirs.
RELEASES_KEPT = 5


class ReleaseFiles(CompressedStaticFilesStorage):  # type: ignore[misc]  # because: it publishes no types
    """Django's storage of static files, one folder deeper."""

    def __init__(self, *args: object, **kwargs: object) -> None:
        folder = release_folder()
        super().__init__(Path(settings.STATIC_ROOT) / folder, f"{settings.STATIC_URL}{folder}/")

    def post_process(
        self, paths: dict[str, object], dry_run: bool = False, **options: object
    ) -> Iterator[object]:
        yield from super().post_process(paths, dry_run, **options)
        if not dry_run:
            _drop_old_releases(Path(self.location))


@cache
def release_folder() -> str:
    """`r-` and twelve hex digits that change with any of the files or their names."""
    parts = [
        path.encode() + hashlib.sha256(found.read_bytes()).digest() for path, found in sorted(_all_files())
    ]
    return f"r-{hashlib.sha256(b''.join(parts)).hexdigest()[:12]}"


def is_collected() -> bool:
    """Whether the files of this release lie where they are served from, or need not."""
    return not settings.IS_COLLECTED or (Path(settings.STATIC_ROOT) / release_folder()).is_dir()


def _all_files() -> Iterator[tuple[str, Path]]:
    seen: set[str] = set()
    for finder in get_finders():
        for path, storage in finder.list(["CVS", ".*", "*~"]):
            if path not in seen:
                seen.add(path)
                yield path, Path(storage.path(path))


def _drop_old_releases(newest: Path) -> None:
    others = [each for each in newest.parent.glob("r-*") if each != newest]
    others.sort(key=lambda each: each.stat().st_mtime, reverse=True)
    for old in others[RELEASES_KEPT - 1 :]:
        shutil.rmtree(old)
