"""A day of 200 businesses in twenty minutes: p95 of each kind of call, errors, memory of the web workers.

The bars: no wrong answer; the web workers' memory in the last third at most 5 % above that in the second. The p95 and
its ratio to a bare view's are printed, with the load of the machine, since they say as much of the machine.
"""

import json
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
MOST_GROWN = 1.05


def main() -> None:
    more = os.environ.get("TRIMOPS_LOAD", "--businesses 200 --seconds 1200").split()
    command = [sys.executable, "-m", "tests.bench.load.load_run", "--worker", *more]
    ended = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, text=True, check=False)
    told = json.loads(ended.stdout)
    print(table_of(told))
    if told["wrong_count"]:
        raise AssertionError(f"{told['wrong_count']} wrong answers: {told['wrong'][:5]}")
    for each in told["memory_mb"]:
        if each["ratio"] > MOST_GROWN:
            raise AssertionError(f"a web worker grows: {each}")


def table_of(told: dict) -> str:
    """What `load_run` found, to be read."""
    rows = {**told["kinds"], "all of these": told["all"], "bare view, one query": told["bare"]}
    lines = [f"  {'kind':24}{'calls':>7}{'share':>8}{'p50 ms':>9}{'p95 ms':>9}{'max ms':>9}"]
    for name, row in rows.items():
        share = f"{100 * row['share']:.1f} %" if "share" in row else ""
        times = "".join(f"{row[each]:>9.1f}" for each in ("p50_ms", "p95_ms", "max_ms"))
        lines.append(f"  {name:24}{row['calls']:>7}{share:>8}{times}")
    lines.append(
        f"  p95 is {told['p95_to_bare']} times the bare view's; {told['wrong_count']} wrong answers; "
        f"calls made late by p95 {told['late_p95_ms']} ms"
    )
    lines += [
        f"  web worker: {each['second_third']:.1f} MB in the second third, {each['last_third']:.1f} MB in the last "
        f"({100 * each['ratio'] - 100:+.1f} %, {each['mb_an_hour']:+.1f} MB an hour)"
        for each in told["memory_mb"]
    ]
    machine = f"{told['cores']} cores, machine load (1, 5, 15 min) before and after: {told['machine_load']}"
    lines.append(f"  {told['businesses']} businesses in {told['seconds']:.0f} s, {machine}")
    return "\n".join(lines)


if __name__ == "__main__":
    main()
