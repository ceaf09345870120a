"""JSON text to plain values, refusing what JSON readers let pass: the same key twice, endless nesting."""

import json
from collections import Counter
from collections.abc import Iterator

from visits.domain.planning.problem_faults import ProblemFaults


class _Pairs(dict[str, object]):
    """An object that remembers which of its keys came twice."""

    twice: tuple[str, ...] = ()


def _pairs(pairs: list[tuple[str, object]]) -> _Pairs:
    read = _Pairs(pairs)
    times = Counter(key for key, _ in pairs)
    read.twice = tuple(key for key, count in times.items() if count > 1)
    return read


def _keys_given_twice(value: object, path: str) -> Iterator[str]:
    if isinstance(value, _Pairs):
        for key in value.twice:
            yield f"{path}{'.' if path else ''}{key}: is given twice"
        for key, inner in value.items():
            yield from _keys_given_twice(inner, f"{path}{'.' if path else ''}{key}")
    elif isinstance(value, list):
        for place, inner in enumerate(value):
            yield from _keys_given_twice(inner, f"{path}[{place}]")


def document(text: str) -> tuple[dict[str, object], list[str]]:
    """The top object of `text` and the faults of its keys.

    Raises ProblemFaults where the text is not JSON, or not an object.
    """
    try:
        read = json.loads(text, object_pairs_hook=_pairs)
        twice = list(_keys_given_twice(read, ""))
    except json.JSONDecodeError as error:
        fault = f"line {error.lineno}, column {error.colno}: is not JSON ({error.msg.lower()})"
        raise ProblemFaults([fault]) from None
    except RecursionError:
        raise ProblemFaults(["document: is nested too deeply"]) from None
    except ValueError:
        raise ProblemFaults(["document: holds a number with far too many digits"]) from None
    if not isinstance(read, dict):
        raise ProblemFaults(["document: is not a JSON object"])
    return read, twice
