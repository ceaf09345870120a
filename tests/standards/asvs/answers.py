"""What we say to each requirement of OWASP ASVS 5.0 that we hold ourselves to (fixtures/asvs/SOURCE.md)."""

import ast
import csv
import tomllib
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[3]
FOLDER = ROOT / "fixtures" / "asvs"
PAGE = ROOT / "DEVELOPERS.md"
SECOND_LEVEL = {"V2", "V3", "V4", "V5", "V6", "V7", "V8", "V14", "V16"}
ALSO = {"V13.2.4"}
STATES = {"met": "met", "partly": "partly", "not": "not", "none": "does not apply"}


@dataclass(frozen=True)
class Answer:
    """`evidence`: `tests/...::test_...`, a file, or `DEVELOPERS.md#Heading`."""

    number: str
    state: str
    about: str
    evidence: tuple[str, ...]
    gap: str


def levels() -> dict[str, str]:
    """Requirement -> level, all of the standard."""
    with (FOLDER / "requirements.csv").open(encoding="utf-8", newline="") as file:
        return {row["requirement"]: row["level"] for row in csv.DictReader(file)}


def needed() -> list[str]:
    """Level 1, and of level 2 the chapters named, in the order of the standard."""
    return [number for number, level in levels().items() if _is_needed(number, level)]


def _is_needed(number: str, level: str) -> bool:
    return level == "1" or number in ALSO or (level == "2" and number.partition(".")[0] in SECOND_LEVEL)


def answers() -> list[Answer]:
    """As they are written down, in their order."""
    told = tomllib.loads((FOLDER / "answers.toml").read_text(encoding="utf-8"))
    return [
        Answer(number, state, about, tuple(evidence), gap)
        for number, (state, about, evidence, gap) in told.items()
    ]


def is_there(evidence: str) -> bool:
    """Whether the test, the file or the heading named is one."""
    path, _, test = evidence.partition("::")
    name, _, heading = path.partition("#")
    file = ROOT / name
    if not file.is_file():
        return False
    if heading:
        lines = file.read_text(encoding="utf-8").splitlines()
        return any(line.startswith("#") and line.lstrip("# ") == heading for line in lines)
    return not test or test in _tests_of(file)


def _tests_of(file: Path) -> set[str]:
    tree = ast.parse(file.read_text(encoding="utf-8"))
    return {node.name for node in tree.body if isinstance(node, ast.FunctionDef)}
