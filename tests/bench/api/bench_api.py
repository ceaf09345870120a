"""A thousand calls of each operation of the API, over a socket, as each role: statuses, faults, calls a second.

The bar: no fault, which is a 5xx, a status or a shape that the description does not tell, or anything else that
schemathesis checks. `TRIMOPS_API_BENCH="--examples 50 --seconds 600 --only list_farms"` makes it shorter.
"""

import json
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]


def main() -> None:
    more = os.environ.get("TRIMOPS_API_BENCH", "").split()
    command = [sys.executable, "-m", "tests.bench.api.api_run", *more]
    ended = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, text=True, check=False)
    told = json.loads(ended.stdout)
    print(table_of(told))
    if told["faults"]:
        raise AssertionError(f"faults at {len(told['faults'])} operations")


def table_of(told: dict) -> str:
    """What `api_run` found, to be read."""
    statuses = ", ".join(f"{status}: {count}" for status, count in told["statuses"].items())
    lines = [
        f"  {told['operations']} operations, {told['calls']} calls (each at least {told['least_calls']} of "
        f"{told['examples']}) in {told['seconds']} s, {told['calls_a_second']} a second, {told['cores']} cores",
        f"  {statuses}",
        f"  {100 * told['succeeded']:.1f} % of the operations succeeded at least once; never: "
        f"{', '.join(told['never_succeeded']) or 'none'}",
        f"  {len(told['faults'])} operations with faults",
    ]
    lines += [
        f"  {name}: {what}\n{how}" for name, each in told["faults"].items() for what, how in each.items()
    ]
    return "\n".join(lines)


if __name__ == "__main__":
    main()
