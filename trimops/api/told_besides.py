"""What is told of the API besides the code: what each field means, and an example of each body and refusal.

Each app keeps its own beside its addresses: `api/words.toml` (what a field means, by its name, or in a table of its
component where that one means something else by it) and `api/examples.json` (a body by the id of its operation).
`trimops/api/words.toml` has what means the same everywhere, and the words of addresses.
"""

import json
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from django.apps import apps

from trimops.api.problem_codes import CORE
from trimops.web.problems import PROBLEM, problem_of

ROOT = Path(__file__).parents[2]
# A rule of the work, as one of many; the others say what their code means everywhere.
BY_RULE = ("period_locked", "The books are closed up to 31 January 2026.")
# As `faults` are told.
FAULTS = {
    400: {"field": "query.limit", "reason": "A valid integer is required."},
    422: {"field": "due_until", "reason": "A day from 1990 to 2100 is meant."},
}


def meaning(maker: type, field: str) -> str:
    """What that field of that serializer means; empty where nobody said."""
    for words in (_words_of(maker.__module__), _words_of("trimops.api")):
        if says := words.get(maker.__name__, {}).get(field) or words.get(field, ""):
            return says if isinstance(says, str) else ""
    return ""


def meaning_in(place: str, name: str) -> str:
    """The same of a word of an address; `place` is `path` or `query`."""
    found: str = _words_of("trimops.api")[place].get(name, "")
    return found


@cache
def kept_examples() -> dict[str, Any]:
    """A body that is taken, by the id of its operation."""
    found: dict[str, Any] = {}
    for file in (Path(app.path, "api", "examples.json") for app in apps.get_app_configs()):
        if file.exists():
            found |= json.loads(file.read_text(encoding="utf-8"))
    return found


def _words_of(module: str) -> dict[str, Any]:
    """Of the app that the module belongs to: a text by the name of a field, tables by that of a component."""
    return _kept_words(module.partition(".api")[0])


@cache
def _kept_words(package: str) -> dict[str, Any]:
    file = ROOT.joinpath(*package.split("."), "api", "words.toml")
    return tomllib.loads(file.read_text(encoding="utf-8")) if file.exists() else {}


def tell_examples(paths: dict[str, Any]) -> None:
    """Each body in JSON has one that is taken, once the ids are one's own; each refusal how it reads."""
    examples = kept_examples()
    for operation in _each(paths):
        body = operation.get("requestBody", {}).get("content", {}).get("application/json")
        if body is not None and operation["operationId"] in examples:
            body["example"] = examples[operation["operationId"]]
        for status, answer in operation["responses"].items():
            if problem := answer.get("content", {}).get(PROBLEM):
                problem["example"] = _refusal(int(status))


def _refusal(status: int) -> dict[str, object]:
    code, says = next(((code, says) for code, known, says in CORE if known == status), BY_RULE)
    if status not in FAULTS:
        return problem_of(status, code, says)
    fault = FAULTS[status]
    return problem_of(status, code, f"{fault['field']}: {fault['reason']}", [fault])


def _each(paths: dict[str, Any]) -> Iterator[dict[str, Any]]:
    return (operation for each in paths.values() for operation in each.values())
