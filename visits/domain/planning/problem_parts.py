"""Parts of a problem document read one by one, so that a fault in one hides no fault in another."""

from typing import TypeVar

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from visits.domain.planning.problem_form import Form

Part = TypeVar("Part", bound=Form)

WORDS = {
    "missing": "is missing",
    "extra_forbidden": "is not a key that belongs here",
    "float_type": "is not a number",
    "int_type": "is not a whole number",
    "string_type": "is not text",
    "list_type": "is not a list",
    "model_type": "is not an object",
    "dict_type": "is not an object",
    "finite_number": "is not a finite number",
    "string_too_short": "is empty",
}


def read_list(raw: dict[str, object], key: str, form: type[Part], faults: list[str]) -> list[Part | None]:
    """Each item of the list at `key`; None where an item has faults, which are added to `faults`."""
    value = raw.get(key)
    if not isinstance(value, list):
        if key in raw:
            faults.append(f"{key}: is not a list")
        return []
    return [read_part(item, f"{key}[{place}]", form, faults) for place, item in enumerate(value)]


def read_part(value: object, path: str, form: type[Part], faults: list[str]) -> Part | None:
    """`value` as `form`, or None with its faults added to `faults`. Null for a key that may be absent is absent."""
    try:
        return form.model_validate(_given(value, form))
    except ValidationError as error:
        faults += [f"{_path(path, fault['loc'])}: {_words(fault)}" for fault in error.errors()]
        return None


def _given(value: object, form: type[Form]) -> object:
    if not isinstance(value, dict):
        return value
    fields = form.model_fields
    return {
        key: inner
        for key, inner in value.items()
        if inner is not None or key not in fields or fields[key].is_required()
    }


def _path(start: str, steps: tuple[int | str, ...]) -> str:
    return start + "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in steps)


def _words(fault: ErrorDetails) -> str:
    kind, limits = fault["type"], fault.get("ctx", {})
    if kind == "value_error":
        return str(limits["error"])
    if kind == "greater_than_equal":
        return "must not be negative" if limits["ge"] == 0 else f"must be {limits['ge']:.15g} or more"
    if kind == "greater_than":
        return f"must be more than {limits['gt']:.15g}"
    if kind == "less_than_equal":
        return f"must be {limits['le']:.15g} or less"
    return WORDS.get(kind, fault["msg"].lower())
