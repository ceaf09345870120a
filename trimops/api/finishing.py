"""The last step of describing: what is said many times is said once, under a name that stays."""

from collections import Counter
from collections.abc import Callable
from copy import deepcopy
from typing import Any

from trimops.api.enum_names import name_enums
from trimops.api.told_besides import tell_examples
from trimops.web.problems import PROBLEM

PROBLEM_COMPONENT = {
    "type": "object",
    "description": "Why it was refused (RFC 9457). Go by `code`; `faults` says what is to be mended, and where.",
    "properties": {
        "type": {
            "type": "string",
            "format": "uri-reference",
            "description": "Leads to what the code means.",
        },
        "title": {"type": "string", "description": "The code, in words."},
        "status": {"type": "integer", "description": "The status of the answer."},
        "code": {"type": "string", "description": "What to go by: it stays."},
        "detail": {"type": "string", "description": "What is wrong, in a sentence for a person."},
        "faults": {
            "type": "array",
            "description": "What is to be mended, each with its place.",
            "items": {
                "type": "object",
                "properties": {"field": {"type": "string"}, "reason": {"type": "string"}},
                "required": ["field", "reason"],
                "additionalProperties": False,
            },
        },
    },
    "required": ["type", "title", "status", "code", "detail"],
    "additionalProperties": False,
}
# What fewer operations share is told out with each.
OFTEN = 5


def finish_description(result: dict[str, Any], **_: Any) -> dict[str, Any]:
    """What `fields` leaves over, problems, how to sign in; enums, refusals, parameters and headers by name."""
    schemas: dict[str, Any] = result.setdefault("components", {}).setdefault("schemas", {})
    for name in sorted(_parts_named(result) - schemas.keys()):
        part = deepcopy(schemas[name.removesuffix("Part")])
        part["required"] = ["id"]
        schemas[name] = part
    name_enums(result)
    _want_files(result["paths"])
    schemas["Problem"] = PROBLEM_COMPONENT
    told, paths = result["components"], result["paths"]
    tell_examples(paths)
    told["responses"] = _share_refusals(paths)
    told["parameters"] = _share(_each_parameter(paths), "parameters", lambda each: str(each["name"]))
    told["headers"] = _share(_each_header(paths), "headers", lambda each: str(each["description"]))
    told["schemas"] = dict(sorted(schemas.items()))
    told["securitySchemes"] = {
        "token": {
            "type": "http",
            "scheme": "bearer",
            "description": "A token that a person made for a program.",
        }
    }
    return result


def _want_files(paths: dict[str, Any]) -> None:
    """A body that is a file must be there; the library says so of sets of fields alone."""
    for each in paths.values():
        for operation in each.values():
            body = operation.get("requestBody", {})
            if body and "application/json" not in body["content"]:
                body["required"] = True


def _share_refusals(paths: dict[str, Any]) -> dict[str, Any]:
    """Each refusal is said once and named by every method; told out each time it would be four fifths of the whole."""
    shared: dict[str, Any] = {}
    for each in paths.values():
        for operation in each.values():
            for status, told in operation["responses"].items():
                if PROBLEM in told.get("content", {}):
                    name = f"Refused{status}"
                    if shared.setdefault(name, told) == told:
                        operation["responses"][status] = {"$ref": f"#/components/responses/{name}"}
    return dict(sorted(shared.items()))


def _each_parameter(paths: dict[str, Any]) -> list[tuple[Any, Any]]:
    """Where each stands: the list and the place in it."""
    lists = [op.get("parameters", []) for each in paths.values() for op in each.values()]
    return [(found, place) for found in lists for place in range(len(found))]


def _each_header(paths: dict[str, Any]) -> list[tuple[Any, Any]]:
    told = [answer for each in paths.values() for op in each.values() for answer in op["responses"].values()]
    found = [answer.get("headers", {}) for answer in told]
    return [(headers, name) for headers in found for name in headers]


def _share(found: list[tuple[Any, Any]], kind: str, name_of: Callable[[Any], str]) -> dict[str, Any]:
    """Of each name what is told most often, if it is often."""
    counted: dict[str, Counter[str]] = {}
    held: dict[str, Any] = {}
    for home, place in found:
        held.setdefault(repr(home[place]), home[place])
        word = _camel(place if isinstance(place, str) else name_of(home[place]))
        counted.setdefault(word, Counter())[repr(home[place])] += 1
    shared: dict[str, Any] = {}
    for word, texts in sorted(counted.items()):
        (text, count), *_ = texts.most_common(1)
        if count >= OFTEN:
            shared[word] = held[text]
    names = {repr(each): word for word, each in shared.items()}
    for home, place in found:
        if (known := names.get(repr(home[place]))) is not None:
            home[place] = {"$ref": f"#/components/{kind}/{known}"}
    return shared


def _camel(name: str) -> str:
    return "".join(part[:1].upper() + part[1:] for part in name.replace("-", "_").split("_"))


def _parts_named(node: Any) -> set[str]:
    if isinstance(node, dict):
        if isinstance(ref := node.get("$ref"), str) and ref.endswith("Part"):
            return {ref.rpartition("/")[2]}
        return set().union(*map(_parts_named, node.values()))
    return set().union(*map(_parts_named, node)) if isinstance(node, list) else set()
