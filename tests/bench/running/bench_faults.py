"""200 businesses while workers, broker, database and mail server fail: each thing is there once in effect afterwards.

Prints what was hurt and what was counted; a kill of a worker's whole group or of one of its children counts as one.
"""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]


def main() -> None:
    subprocess.run([sys.executable, "-m", "tests.services.fault_run"], cwd=ROOT, check=True)


if __name__ == "__main__":
    main()
