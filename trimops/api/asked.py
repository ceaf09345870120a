"""Reading the query of a call: every word is known, or it is told which is not."""

import re
from collections.abc import Iterable
from functools import cache
from typing import Any

from rest_framework import serializers
from rest_framework.request import Request

from trimops.api.cursors import MOST, USUAL
from trimops.api.fields import Exactly
from trimops.api.op import Op
from trimops.api.refusals import CannotBeMeant
from trimops.web.refusals import Malformed


class Words(serializers.RegexField):
    """Text in a query: something but blanks, and no NUL, which no database keeps."""

    def __init__(self, **options: Any) -> None:
        super().__init__(r"^[^\x00]*[^\x00\s][^\x00]*$", **options)


class WholeNumber(serializers.IntegerField):
    """A whole number in a query, in plain digits and no other way of writing it."""

    def to_internal_value(self, data: Any) -> int:
        if not re.fullmatch(r"-?[0-9]+", str(data)):
            self.fail("invalid")
        return super().to_internal_value(data)


class Measure(serializers.FloatField):
    """A number in a query, in plain digits."""

    def to_internal_value(self, data: Any) -> float:
        if not re.fullmatch(r"-?[0-9]{1,20}(\.[0-9]{1,20})?", str(data)):
            self.fail("invalid")
        return super().to_internal_value(data)


class YesOrNo(serializers.BooleanField):
    """`true` or `false` in a query."""

    def to_internal_value(self, data: Any) -> bool:
        if data not in ("true", "false"):
            self.fail("invalid", input=data)
        return bool(data == "true")


class FieldNames(Exactly):
    """Names of fields, comma between; read as their set, the id always with them."""

    def __init__(self, names: frozenset[str]) -> None:
        one = "|".join(sorted(names))
        super().__init__(
            rf"^({one})(,({one}))*$",
            max_length=2000,
            help_text="Only these fields, comma between, and the id.",
        )

    def run_validation(self, data: Any = serializers.empty) -> Any:
        return frozenset(super().run_validation(data).split(",")) | {"id"}


def query_fields(op: Op) -> dict[str, Any]:
    """Each word that the query of this call may carry, with the field that reads it; none is needed."""
    fields: dict[str, Any] = {name: each.reads for name, each in op.filters.items()} | dict(op.query)
    if op.lists:
        fields["cursor"] = Exactly(
            r"^[A-Za-z0-9:_-]+$", max_length=2000, help_text="From next or previous of a page."
        )
        fields["limit"] = WholeNumber(
            min_value=1, max_value=MOST, help_text=f"Rows on a page; {USUAL} if nothing is said."
        )
        if op.orders:
            words = [word for name in op.orders for word in (name, f"-{name}")]
            fields["order"] = serializers.ChoiceField(words, help_text="Order of the rows; - turns it round.")
    if names := shown_names(op):
        fields["fields"] = FieldNames(names)
    return fields


def read_query(request: Request, op: Op) -> dict[str, Any]:
    """What is asked, read. Malformed (400) names each word that is unknown, said twice or unreadable.

    CannotBeMeant (422) each that is as described and out of all reason (the year 9999).
    """
    fields, faults, found = query_fields(op), [], {}
    far: list[tuple[str, str]] = []
    for name, values in request.query_params.lists():
        if name not in fields:
            faults.append((f"query.{name}"[:80], "Nothing here asks for that."))
        elif len(values) > 1:
            faults.append((f"query.{name}", "Say it once."))
        else:
            try:
                found[name] = fields[name].run_validation(values[0])
            except serializers.ValidationError as fault:
                for each in _lines(fault.detail):
                    (far if each.code == "far" else faults).append((f"query.{name}", str(each)))
    if faults:
        raise Malformed([*faults, *far])
    if far:
        raise CannotBeMeant(faults=far)
    return found


def shown_names(op: Op) -> frozenset[str]:
    """The fields of what is shown; none where it is no set of fields, or says only what it has just done."""
    shows: Any = op.shows
    if shows is None or op.repeats or op.changes or not issubclass(shows, serializers.Serializer):
        return frozenset()
    names = _names_of(shows)
    return names if "id" in names else frozenset()


@cache
def _names_of(shows: Any) -> frozenset[str]:
    """Read once: to make all fields of a serializer takes a tenth of the time of a call."""
    return frozenset(shows().fields)


def _lines(detail: Any) -> Iterable[Any]:
    return detail if isinstance(detail, list) else [detail]
