"""What a random call says where random data alone would find nothing: own rows, their true ETags, keys of its own."""

import random
import re
from collections.abc import Callable, Mapping
from typing import Any
from urllib.parse import urlsplit
from uuid import UUID, uuid5

from django.urls import resolve
from schemathesis import Case
from schemathesis.core.parameters import ParameterLocation

from tests.factories import MONDAY
from tests.standards.api.drawing import is_sound
from tests.walls.route import Route

REST = (ParameterLocation.PATH, ParameterLocation.QUERY, ParameterLocation.BODY)
KEYS = UUID("00000000-0000-4000-8000-000000000009")
# A row is named in a body by what it is; where that word is not the word of tests/walls/furnished.py, it stands here.
CALLED = {
    "visit": ("planned", "finished", "under_way"),
    "visits": ("planned", "finished", "under_way"),
    "client": ("access",),
    "invoice": ("issued", "invoice"),
    "invoices": ("invoice", "issued"),
    "drafts": ("invoice",),
    "against": ("issued",),
}


# What is no row, in words that there are.
NAMED = {"week": str(MONDAY), "part": "sales-journal", "year": MONDAY.year, "what": "consumables"}
# How often a sound call is made as the description shows it: by chance alone a wish that fits the house is rare.
AS_SHOWN = 0.12


class Hand:
    """`keyrings` are keys by their word, `examples` bodies with such keys in them by the name of their operation;
    `routes` the rows of the wall; `dice` chance that is the same each time.
    """

    def __init__(
        self,
        keyrings: list[dict[str, object]],
        examples: Mapping[str, Any],
        routes: Mapping[str, Route],
        dice: random.Random,
    ) -> None:
        self.keyrings, self.examples, self.routes, self.dice = keyrings, examples, routes, dice
        self.calls = 0

    def guide(self, case: Case, tag: Callable[[], str]) -> None:
        """Some of what was drawn becomes what is there; what breaks the description on purpose stays as it is.

        `tag` reads the tag of the row that the case then names.
        """
        self.calls += 1
        case.freeze_metadata()
        if case.path_parameters and is_sound(case, ParameterLocation.PATH) and self.dice.random() < 0.85:
            self._name_own_rows(case)
        if self.dice.random() < AS_SHOWN and all(
            is_sound(case, place) for place in (*REST, ParameterLocation.HEADER)
        ):
            self._say_as_shown(case)
        if is_sound(case, ParameterLocation.HEADER):
            # because: where something else is spoilt, "this key was used for another call" would be as right an answer
            is_spoilt = not all(is_sound(case, place) for place in REST)
            if case.headers.get("Idempotency-Key") and (is_spoilt or self.dice.random() < 0.95):
                case.headers["Idempotency-Key"] = str(uuid5(KEYS, str(self.calls)))
            if case.headers.get("If-Match"):
                self._say_version(case, tag)
        if is_sound(case, ParameterLocation.BODY) and isinstance(case.body, dict | list):
            case.body = self._with_own_rows(case.body)
        if is_sound(case, ParameterLocation.QUERY) and case.query:
            case.query = self._with_own_rows(dict(case.query))

    def _say_as_shown(self, case: Case) -> None:
        """The example's body, at its own row; of the words of a query those alone that are needed."""
        needed = {each.name for each in case.operation.query if each.is_required}
        case.query = {name: said for name, said in dict(case.query or {}).items() if name in needed}
        example = self.examples.get(case.operation.definition.raw["operationId"])
        if example is not None and isinstance(case.body, dict | list):
            case.body = example
            self._name_own_rows(case, self.keyrings[:1])

    def _say_version(self, case: Case, tag: Callable[[], str]) -> None:
        """Half the changes name the true version, some any version; the rest stays as drawn, which is stale."""
        chance = self.dice.random()
        if chance < 0.5:
            case.headers["If-Match"] = tag() or "*"
        elif chance < 0.8:
            case.headers["If-Match"] = "*"

    def _name_own_rows(self, case: Case, of: list[dict[str, object]] | None = None) -> None:
        filled = re.sub(r"\{(\w+)\}", lambda found: _sample(found[1], case.path_parameters), case.path)
        route = self.routes[resolve(urlsplit(filled).path).url_name]
        ring = self.dice.choice(of or self.keyrings)
        whole = {**self.keyrings[0], **ring}
        case.path_parameters |= {name: said for name, said in NAMED.items() if name in case.path_parameters}
        for part, row in route.rows.items():
            word = self.dice.choice(CALLED["visit"]) if row in CALLED["visit"] else row
            name = "id" if part == "pk" else part
            if name in case.path_parameters:
                case.path_parameters[name] = _plain(whole[word])

    def _with_own_rows(self, said: Any, word: str = "") -> Any:
        if isinstance(said, dict):
            return {name: self._with_own_rows(each, name) for name, each in said.items()}
        if isinstance(said, list):
            return [self._with_own_rows(each, word) for each in said]
        if isinstance(said, int) and not isinstance(said, bool) and self.dice.random() < 0.9:
            ring = {**self.keyrings[0], **self.dice.choice(self.keyrings)}
            stem = word.removesuffix("_id")
            words = CALLED.get(stem) or [each for each in (stem, stem.removesuffix("s")) if each in ring]
            found = [_plain(ring[each]) for each in words if each in ring]
            return self.dice.choice(found) if found and isinstance(found[0], int) else said
        return said


def _sample(name: str, said: Mapping[str, Any]) -> str:
    value = said.get(name, 1)
    return (
        str(value)
        if not isinstance(value, str) or value.isalnum() or re.fullmatch(r"[\w.-]+", value)
        else "x"
    )


def _plain(key: object) -> Any:
    return str(key) if isinstance(key, UUID) else key
