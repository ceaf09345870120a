"""What the API refuses before a service is asked, each with its status and its code."""

from collections.abc import Iterable, Mapping, Sequence

from rest_framework.exceptions import APIException

Fault = tuple[str, str]


class Refused(APIException):
    """A refusal with the places that are to be mended; `faults` are (path, reason)."""

    code = "refused"

    def __init__(self, detail: str = "", faults: Sequence[Fault] = ()) -> None:
        self.faults = [{"field": field, "reason": reason} for field, reason in faults]
        super().__init__(detail or "; ".join(f"{field}: {reason}" for field, reason in faults))


class CannotBeMeant(Refused):
    """422: it has the described shape, but what it says cannot be (RFC 9110, 15.5.21)."""

    status_code = 422
    code = "cannot_be_meant"


class Stale(Refused):
    """412: somebody changed the row since it was read (RFC 9110, 15.5.13)."""

    status_code = 412
    code = "stale"


class NeedsMatch(Refused):
    """428: a change says which version it changes (RFC 6585, 3)."""

    status_code = 428
    code = "needs_if_match"


def flatten(errors: object, path: str = "") -> list[Fault]:
    """The errors of a serializer as (path, reason): `feet[2].foot`."""
    if isinstance(errors, Mapping):
        return _joined(flatten(each, _below(path, name)) for name, each in errors.items())
    if isinstance(errors, list | tuple):
        is_deep = any(isinstance(each, Mapping | list) for each in errors)
        if is_deep:
            return _joined(flatten(each, f"{path}[{n}]") for n, each in enumerate(errors) if each)
        return [(path, str(each)) for each in errors]
    return [(path, str(errors))]


def _below(path: str, name: object) -> str:
    if name == "non_field_errors":
        return path
    if isinstance(name, int):
        # because: the library tells the rows of a list by their place
        return f"{path}[{name}]"
    return f"{path}.{name}" if path else str(name)


def _joined(parts: Iterable[list[Fault]]) -> list[Fault]:
    return [fault for part in parts for fault in part]
