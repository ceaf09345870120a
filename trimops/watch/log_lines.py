"""A line of the log: plain for a person, or one JSON object for a machine. Neither holds a secret link.

Named in the settings. A record's attribute `told`, a mapping of plain values, becomes fields of its own:
`log.info("request", extra={"told": {"status": 200}})`.
"""

import json
import logging
import re
import time
from collections.abc import Mapping
from datetime import UTC, datetime

from trimops.settings.hide_secrets import hide_secrets
from trimops.watch.marks import marks

# What would begin a line of its own, or write over one, in somebody's terminal or reader.
BREAKS = re.compile(r"[\x00-\x08\x0a-\x1f\x7f-\x9f\u2028\u2029]")


class PlainLines(logging.Formatter):
    """`time LEVEL logger message name=value ...`; a traceback follows on lines of its own."""

    # UTC, and it says so (ASVS 16.2.2).
    converter = staticmethod(time.gmtime)
    default_msec_format = "%s,%03dZ"

    def formatMessage(self, record: logging.LogRecord) -> str:
        fields = {**_told(record), **_marks_of(record)}
        words = [super().formatMessage(record), *(f"{name}={value}" for name, value in fields.items())]
        return _on_one_line(" ".join(words))

    def format(self, record: logging.LogRecord) -> str:
        return hide_secrets(super().format(record))


class JsonLines(logging.Formatter):
    """{"time", "level", "logger", "message", ...}: time in UTC (RFC 3339), a traceback in "exception"."""

    def format(self, record: logging.LogRecord) -> str:
        # What the line says of itself stands last, so that nothing told can pass for it.
        line = {
            **_told(record),
            **_marks_of(record),
            "time": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname,
            "logger": record.name,
            "message": record.getMessage(),
        }
        if record.exc_info:
            line["exception"] = self.formatException(record.exc_info)
        elif record.exc_text:
            line["exception"] = record.exc_text
        return _on_one_line(hide_secrets(json.dumps(line, default=str, ensure_ascii=False)))


def _on_one_line(text: str) -> str:
    """Breaks written out as JSON does, so that nobody who is quoted can forge a line."""
    return BREAKS.sub(lambda found: f"\\u{ord(found[0]):04x}", text)


def _told(record: logging.LogRecord) -> Mapping[str, object]:
    told = getattr(record, "told", None)
    return told if isinstance(told, Mapping) else {}


def _marks_of(record: logging.LogRecord) -> Mapping[str, str]:
    """Those of now; Django says what it refused only after all middleware, but names the request with it."""
    number = getattr(getattr(record, "request", None), "request_id", None)
    return {"request_id": number, **marks()} if isinstance(number, str) else marks()
