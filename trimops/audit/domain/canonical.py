"""One text for one value, so that its hash can be worked out again by anybody.

The rule, after RFC 8785 (JSON canonicalization): UTF-8, no spaces, the names of each object sorted by code point,
signs as they are but for quotes, backslashes and control signs. Unlike it: numbers of rows are whole, and whatever is
not whole is a text, so that no two programs need agree on how a float is written: decimals as plain digits with their
places, times as ISO 8601 in UTC, days and hours as ISO 8601. A float inside a JSON column is written as Python's repr.
"""

import json
from datetime import UTC, date, datetime, time
from decimal import Decimal
from uuid import UUID


def canonical(value: object) -> str:
    """The text of a value made of dicts with text keys, lists and plain values. TypeError for anything else."""
    return _ENCODER.encode(value)


class _Encoder(json.JSONEncoder):
    """What JSON does not know itself: it is asked for each such value alone, which keeps rows of plain values quick."""

    def default(self, o: object) -> object:
        if isinstance(o, Decimal):
            return format(o, "f")
        if isinstance(o, datetime):
            return o.astimezone(UTC).isoformat()
        if isinstance(o, date | time):
            return o.isoformat()
        if isinstance(o, UUID):
            return str(o)
        raise TypeError(f"{type(o).__name__} has no canonical text")


_ENCODER = _Encoder(sort_keys=True, separators=(",", ":"), ensure_ascii=False)
