"""The description of the API as schemathesis reads it, with every check that it has."""

import json
import os
from copy import deepcopy
from dataclasses import dataclass
from functools import cache
from typing import Any

import schemathesis

from trimops.api.description import DESCRIPTION

# Data that fit the description may still be refused by a rule of the work, and by who asks; never as malformed.
FITS = ["2xx", "304", "401", "403", "404", "409", "412", "422", "428", "429"]
# Data that break it are malformed, unless something before it says no.
BREAKS = ["400", "401", "403", "404", "406", "405", "412", "413", "415", "428", "429"]
CONFIG = {
    "generation": {"with-security-parameters": False},
    "checks": {
        "positive_data_acceptance": {"expected-statuses": FITS},
        "negative_data_rejection": {"expected-statuses": BREAKS},
        # What is not there, or not for that asker, is said before what is lacking; 428 (RFC 6585) is for If-Match.
        "missing_required_header": {"expected-statuses": ["400", "401", "403", "404", "428"]},
    },
}
# A query word whose every text of two thousand signs would be written by its pattern: a minute for each operation.
WORDY = "fields"
# So many calls of each operation; `make bench` asks more of them (tests/bench/api).
EXAMPLES = int(os.environ.get("TRIMOPS_API_EXAMPLES", "50"))
PARTS = 2


@dataclass(frozen=True)
class Described:
    """Each operation by its id; `brief` are the same for cases at the bounds of what is described.

    In brief, of `fields` only the shortest and the longest answer is said, and of If-Match two of its kinds.
    """

    whole: dict[str, Any]
    brief: dict[str, Any]


@cache
def described(program: Any = None) -> Described:
    """Operations that are called straight in `program`, a WSGI application; over a socket, where there is none."""
    raw = json.loads(DESCRIPTION.read_text())
    return Described(_by_name(raw, program), _by_name(_brief(raw), program))


def names() -> list[str]:
    raw = json.loads(DESCRIPTION.read_text())
    each = (said for address in raw["paths"].values() for said in address.values())
    return [said["operationId"] for said in each if isinstance(said, dict)]


def part(number: int) -> list[str]:
    """Names of one of PARTS even parts: `make test` hands files out, and two processes are to be full until the end."""
    return names()[number::PARTS]


def _brief(raw: dict[str, Any]) -> dict[str, Any]:
    whole: dict[str, Any] = deepcopy(raw)
    # because: of its pattern schemathesis makes no example there, and no body would be tried with a sound header
    whole["components"]["parameters"]["IfMatch"]["schema"] = {"enum": ["*", '"as-it-was"']}
    for address in whole["paths"].values():
        for said in address.values():
            for each in said.get("parameters", []) if isinstance(said, dict) else []:
                if each.get("name") == WORDY:
                    words = each["schema"]["pattern"][2:].partition(")")[0].split("|")
                    each["schema"] = {"enum": [words[0], ",".join(words)]}
    return whole


def _by_name(raw: dict[str, Any], program: Any) -> dict[str, Any]:
    schema = schemathesis.openapi.from_dict(raw, config=schemathesis.Config.from_dict(CONFIG))
    schema.app = program
    found = (each.ok() for each in schema.get_all_operations())
    return {each.definition.raw["operationId"]: each for each in found}
