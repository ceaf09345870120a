"""The signature of readable code bases, measured: `python -m tests.architecture.signature` prints it."""

import ast
import statistics
import sys
from dataclasses import dataclass

from tests.architecture.source_tree import functions_of, name_of, product_files

Function = ast.FunctionDef | ast.AsyncFunctionDef
FILE_LINES = 100
FUNCTION_LINES = 40
SHORT_SHARE = 0.9


@dataclass(frozen=True)
class Signature:
    files: int
    median_file: float
    longest_file: tuple[int, str]
    functions: int
    short_share: float
    long_functions: list[str]
    inner_imports: list[str]
    unannotated: list[str]

    def __str__(self) -> str:
        lines, name = self.longest_file
        return (
            f"files {self.files}, median {self.median_file:.0f} lines (under {FILE_LINES}), "
            f"longest {lines} ({name})\n"
            f"functions {self.functions}, under {FUNCTION_LINES} lines {self.short_share:.1%} "
            f"(at least {SHORT_SHARE:.0%})\n"
            f"imports inside a function {len(self.inner_imports)}, "
            f"functions without full annotations {len(self.unannotated)}"
        )

    def faults(self) -> list[str]:
        too_long = self.median_file >= FILE_LINES
        too_few_short = self.short_share < SHORT_SHARE
        return [
            *([f"the median file has {self.median_file} lines"] if too_long else []),
            *(self.long_functions if too_few_short else []),
            *(f"import inside a function: {where}" for where in self.inner_imports),
            *(f"not fully annotated: {where}" for where in self.unannotated),
        ]


def measure() -> Signature:
    """Read the whole product once. Empty files (package marks) are no files here: they would flatter it."""
    sizes = [(len(path.read_text().splitlines()), name_of(path)) for path in product_files()]
    written = [size for size in sizes if size[0] > 0]
    found = [(function, name_of(path)) for path in product_files() for function in functions_of(path)]
    long_ones = [(lines_of(f), _at(f, where)) for f, where in found if lines_of(f) >= FUNCTION_LINES]
    return Signature(
        files=len(written),
        median_file=statistics.median(size for size, _ in written),
        longest_file=max(written),
        functions=len(found),
        short_share=1 - len(long_ones) / len(found),
        long_functions=[f"{lines} lines: {where}" for lines, where in sorted(long_ones, reverse=True)],
        inner_imports=[_at(f, where) for f, where in found if _imports_inside(f)],
        unannotated=[_at(f, where) for f, where in found if not _is_annotated(f)],
    )


def lines_of(function: Function) -> int:
    return (function.end_lineno or function.lineno) - function.lineno + 1


def _at(function: Function, where: str) -> str:
    return f"{where}:{function.lineno} {function.name}"


def _imports_inside(function: Function) -> bool:
    return any(isinstance(node, ast.Import | ast.ImportFrom) for node in ast.walk(function))


def _is_annotated(function: Function) -> bool:
    given = function.args
    own = [*given.posonlyargs, *given.args, *given.kwonlyargs]
    own += [extra for extra in (given.vararg, given.kwarg) if extra is not None]
    unsaid = [arg for arg in own if arg.annotation is None and arg.arg not in ("self", "cls")]
    return function.returns is not None and not unsaid


if __name__ == "__main__":
    measured = measure()
    print(measured)
    print("\n".join(measured.faults()))
    sys.exit(1 if measured.faults() else 0)
