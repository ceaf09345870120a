"""The audit shares nothing with the planner."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[5]
ASK = """
import sys
import visits.domain.planning.audit
inside = [name for name in sys.modules if name.startswith("visits.domain.planning.")]
print(*(name for name in inside if not name.startswith("visits.domain.planning.audit")))
print(*(name for name in ("pyvrp", "vroom", "django", "pydantic") if name in sys.modules))
print(len(inside))
"""


def test_importing_the_audit_loads_no_part_of_the_planner_and_no_engine():
    asked = subprocess.run([sys.executable, "-c", ASK], cwd=ROOT, capture_output=True, text=True, check=True)
    planner, engines, loaded = asked.stdout.split("\n")[:3]
    assert (planner, engines) == ("", "")
    assert int(loaded) > 10
