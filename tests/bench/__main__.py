"""`python -m tests.bench [WORD]`: run every tests/bench/*/bench_*.py, or those whose name holds WORD.

Each such module has a `main() -> None` that measures and prints, and raises where a bar is missed.
"""

import importlib
import sys
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent


def bench_modules(word: str) -> list[str]:
    paths = sorted(HERE.glob("*/bench_*.py"))
    return [f"tests.bench.{path.parent.name}.{path.stem}" for path in paths if word in str(path)]


def main(word: str = "") -> int:
    names = bench_modules(word)
    for name in names:
        print(f"== {name}", flush=True)
        began = time.perf_counter()
        importlib.import_module(name).main()
        print(f"== {name} took {time.perf_counter() - began:.1f} s", flush=True)
    if not names:
        print("No bench found.")
    return 0 if names else 1


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:2]))
