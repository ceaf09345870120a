"""The best plans of the made-up weeks that any run here has found, kept in `best_known.json` beside this file.

A key names the week: "farms/vans/seed/load". `missing` counts jobs that must be done and are not, `cost` is the
contract's; `how` says which run found it. A better plan found by any bench replaces the old one when asked to.
"""

import json
from pathlib import Path

from tests.bench.planning.week_figures import Figures

FILE = Path(__file__).with_name("best_known.json")


def key(farms: int, vans: int, seed: int, load: float) -> str:
    return f"{farms}/{vans}/{seed}/{load:g}"


def known() -> dict[str, dict]:
    return json.loads(FILE.read_text()) if FILE.exists() else {}


def note(name: str, figures: Figures, how: str) -> None:
    """Keep the plan's figures if they are the best yet."""
    rows = known()
    old = rows.get(name)
    if old is None or (figures.missing, figures.cost) < (old["missing"], old["cost"] - 0.01):
        rows[name] = {"missing": figures.missing, "cost": round(figures.cost, 2), "how": how}
        FILE.write_text(json.dumps(dict(sorted(rows.items())), indent=1) + "\n")


def gap(name: str, figures: Figures) -> float:
    """Per cent above the best known; below 0 where better. A job more that must be done and is not counts 100."""
    best = known()[name]
    return 100 * (figures.cost / best["cost"] - 1) + 100 * (figures.missing - best["missing"])
