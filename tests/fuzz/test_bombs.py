"""What is small on the wire and huge inside is refused, or read, in five seconds and 300 MB."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_no_bomb_goes_off():
    """The slow ones too: tests/bench/fuzz."""
    command = [sys.executable, "-W", "ignore", "-m", "tests.fuzz.bombs", "--quick"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, timeout=300)
    assert done.returncode == 0, done.stdout[-500:] + done.stderr[-1_500:]
    assert len(done.stdout.splitlines()) > 40
