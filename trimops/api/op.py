"""What one method of one address is: who may, what it takes, what it shows. The description is made of this."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from email.utils import format_datetime
from typing import Any

from rest_framework import serializers

from trimops.accounts.actions import Action

JSON = "application/json"
# What a body said, read: field by name.
Said = dict[str, Any]
Shape = Any
"""Whatever a serializer reads or shows, and rows as the library narrows them: it publishes no types."""
Content = type[serializers.Serializer]  # type: ignore[type-arg]


@dataclass(frozen=True)
class Deprecated:
    """To be left: since when, and the first moment at which it may be gone; both aware. A year lies between them."""

    since: datetime
    until: datetime

    def headers(self) -> dict[str, str]:
        """`Deprecation` (RFC 9745) and `Sunset` (RFC 8594), both from memory."""
        sunset = format_datetime(self.until.astimezone(UTC), usegmt=True)
        return {"Deprecation": f"@{int(self.since.timestamp())}", "Sunset": sunset}


@dataclass(frozen=True)
class Filter:
    """One word of the query: the field that reads it, and the lookup of the rows that it narrows."""

    reads: serializers.Field  # type: ignore[type-arg]
    lookup: str


@dataclass(frozen=True)
class Op:
    """One method of an address.

    `name` is its stable id (`list_farms`), `says` one line for a reader. `takes` and `shows` are serializers; `status`
    is that of success. `lists` marks a page of rows, with `filters` and `orders` (name -> fields; the first is the
    rule). `changes` marks a change of one row under If-Match, `repeats` a call under an Idempotency-Key. `media` is
    what a file is. `query` are further words of the query, read by the view itself through `asked`.
    """

    action: Action
    name: str
    says: str
    takes: Content | None = None
    shows: Content | None = None
    status: int = 200
    lists: bool = False
    changes: bool = False
    repeats: bool = False
    media: str = JSON
    filters: Mapping[str, Filter] = field(default_factory=dict)
    orders: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    query: Mapping[str, serializers.Field] = field(default_factory=dict)  # type: ignore[type-arg]
    deprecated: Deprecated | None = None
