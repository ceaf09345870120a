"""This trimops as a backup knows it: its version, and the migrations that it has."""

import tomllib
from dataclasses import dataclass

from django.conf import settings
from django.db.migrations.loader import MigrationLoader

from trimops.backup.errors import OlderProgram
from trimops.backup.manifest import Manifest


@dataclass(frozen=True)
class Program:
    """`migrations` are named "app.name"."""

    version: str
    migrations: frozenset[str]

    def refuse_newer(self, manifest: Manifest) -> None:
        """OlderProgram where the backup was made by a trimops that knows more than this one."""
        unknown = sorted(set(manifest.contents.migrations) - self.migrations)
        if unknown:
            raise OlderProgram(
                f"This backup was made by trimops {manifest.program}, which is newer than this {self.version}: "
                f"{len(unknown)} of its migrations are not known here ({unknown[-1]}). Install that one, then restore."
            )

    def awaited(self, manifest: Manifest) -> int:
        """How many migrations are still to be applied to what was restored."""
        return len(self.migrations - set(manifest.contents.migrations))


def this_program() -> Program:
    """From pyproject.toml and the migrations that lie on the disk; no database is asked."""
    with (settings.BASE_DIR / "pyproject.toml").open("rb") as opened:
        version = tomllib.load(opened)["project"]["version"]
    found = MigrationLoader(None, ignore_no_migrations=True).disk_migrations
    names = {f"{app}.{name}" for app, name in found}
    # A squashed migration is recorded by the names of those that it replaces as well.
    names |= {f"{app}.{name}" for migration in found.values() for app, name in migration.replaces}
    return Program(str(version), frozenset(names))
