"""`python -m tests.services.with_services COMMAND...`: run COMMAND beside a PostgreSQL and a Valkey of its own.

Both are new, on no standard port, and gone afterwards. The command finds them in DATABASE_URL and REDIS_URL.
"""

import os
import signal
import subprocess
import sys
import tempfile
from pathlib import Path

from tests.services.postgres import postgres, server_account
from tests.services.processes import bound_to_this_process, stop
from tests.services.valkey import valkey


class Interrupted(BaseException):
    """This process was asked to end."""


def main(command: list[str]) -> int:
    for asked in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
        signal.signal(asked, _interrupt)
    with tempfile.TemporaryDirectory(prefix="trimops-services-") as folder:
        os.chmod(folder, 0o755)
        data = server_account().owns(Path(folder) / "pg")
        with postgres(data, is_quick=True) as database, valkey(Path(folder) / "vk", is_kept=False) as broker:
            return _run(command, {**os.environ, "DATABASE_URL": database, "REDIS_URL": broker})


def _run(command: list[str], env: dict[str, str]) -> int:
    bound = [*bound_to_this_process(signal.SIGTERM), *command]
    # In a session of its own: Ctrl-C reaches this process, which passes it on once.
    process = subprocess.Popen(bound, env=env, start_new_session=True)
    try:
        return process.wait()
    finally:
        stop(process, signal.SIGINT)


def _interrupt(asked: int, frame: object) -> None:
    # The stop itself takes seconds and must not be cut short: it ends by force where asking does not help.
    for later in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
        signal.signal(later, signal.SIG_IGN)
    raise Interrupted


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except Interrupted:
        sys.exit(130)
