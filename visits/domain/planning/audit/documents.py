"""A JSON text to the plain document the audit works on."""

import json


class Unreadable(ValueError):
    """A document that cannot be audited. `faults`: one line each, JSON path and what to mend."""

    def __init__(self, faults: list[str]) -> None:
        super().__init__("\n".join(faults))
        self.faults = faults


def read_document(text: str) -> dict[str, object]:
    """The object a JSON text holds.

    Raises Unreadable for text that is no JSON (RFC 8259), a name given twice in one object, NaN or an
    infinity, and anything but an object at the top.
    """
    try:
        found: object = json.loads(text, object_pairs_hook=_once_each, parse_constant=_no_number)
    except json.JSONDecodeError as wrong:
        raise Unreadable([f"line {wrong.lineno} column {wrong.colno}: {wrong.msg}"]) from wrong
    except (ValueError, RecursionError) as wrong:
        raise Unreadable([f"$: {wrong}"]) from wrong
    if not isinstance(found, dict):
        raise Unreadable(["$: is not an object"])
    return found


def _once_each(pairs: list[tuple[str, object]]) -> dict[str, object]:
    found: dict[str, object] = {}
    for name, value in pairs:
        if name in found:
            raise ValueError(f'the name "{name}" is given twice in one object')
        found[name] = value
    return found


def _no_number(word: str) -> object:
    raise ValueError(f"{word} is not a JSON number")
