"""4 processes issue 250 invoices each on a real PostgreSQL while 50 of them are killed at random times."""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
ISSUES, KILLS = 1000, 50


def on_servers(test: str, **env: object) -> None:
    """Run a test file in full beside servers of its own; what it prints is shown."""
    command = [
        *(sys.executable, "-m", "tests.services.with_services"),
        *(sys.executable, "-m", "pytest", "-q", "-s", "-p", "no:cacheprovider", test),
    ]
    asked = {name: str(value) for name, value in env.items()}
    subprocess.run(command, cwd=ROOT, env={**os.environ, **asked}, check=True)


def main() -> None:
    on_servers("tests/services/test_issue_kill.py", TRIMOPS_ISSUES=ISSUES, TRIMOPS_KILLS=KILLS)


if __name__ == "__main__":
    main()
