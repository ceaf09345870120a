"""Words to choose from get the name that the code has for them: stable, whoever else uses them."""

from collections import defaultdict
from collections.abc import Iterator
from enum import Enum
from typing import Any

OURS = ("trimops.", "farms.", "visits.", "invoicing.")
Words = tuple[str, ...]


def name_enums(result: dict[str, Any]) -> None:
    """Each list of words that is one enum of ours becomes a component of that name; others stay where they are."""
    names, schemas = _names(), result["components"]["schemas"]
    found: dict[str, Any] = {}
    for node in _choices(result):
        words = tuple(each for each in node["enum"] if each not in (None, ""))
        name = names.get(words)
        if name is None or name in schemas:
            continue
        own, told = _apart(node.pop("description", ""))
        found.setdefault(name, {"type": "string", "enum": list(words)})
        if told:
            found[name]["description"] = told
        _point(node, name)
        if own:
            node["description"] = own
    schemas |= found


def _point(node: dict[str, Any], name: str) -> None:
    ref = {"$ref": f"#/components/schemas/{name}"}
    others: list[Any] = [{"const": ""}] if "" in node["enum"] else []
    others += [{"type": "null"}] if None in node["enum"] else []
    for key in ("enum", "type", "x-spec-enum-id"):
        node.pop(key, None)
    if others:
        node["anyOf"] = [ref, *others]
    else:
        node["$ref"] = ref["$ref"]


def _apart(text: str) -> tuple[str, str]:
    """What a field says of itself, and the list of words and their labels that the library puts behind it."""
    own, mark, told = text.partition("* `")
    return own.strip(), f"{mark}{told}".strip()


def _names() -> dict[Words, str]:
    """Enums of ours by their words; words that two of them share name neither."""
    found: dict[Words, set[str]] = defaultdict(set)
    for kind in _below(Enum):
        if kind.__module__.startswith(OURS):
            found[tuple(str(member.value) for member in kind)].add(kind.__name__)
    return {words: min(names) for words, names in found.items() if len(names) == 1 and len(words) > 1}


def _below(kind: type[Enum]) -> Iterator[type[Enum]]:
    for one in kind.__subclasses__():
        yield one
        yield from _below(one)


def _choices(node: Any) -> Iterator[dict[str, Any]]:
    if isinstance(node, dict):
        if isinstance(node.get("enum"), list):
            yield node
        else:
            for each in list(node.values()):
                yield from _choices(each)
    elif isinstance(node, list):
        for each in node:
            yield from _choices(each)
