"""Keeps addresses that are their own key out of the log."""

import logging
import re

# A segment of an address that is nothing but many letters of a token (they have 43 or more; words have hyphens and
# dots, and seldom so many), before a paper's or feed's ending too. What stands in a log can be read by more people
# than the one who was sent the link. %2F: an address inside another one's query.
TOKEN = re.compile(
    r"(?:(?<=/)|(?<=%2F)|(?<=%2f))[A-Za-z0-9_:=~-]{24,}(?=[/?#&%\s\"'\\,;)\]>]|\.(?:ics|pdf|xml|jpg|csv)\b|$)"
)


def hide_secrets(text: str) -> str:
    """The text with an ellipsis for each token in an address."""
    return TOKEN.sub("...", text)


class HideSecrets(logging.Filter):
    """Writes an ellipsis for each token in what is logged of a request."""

    def filter(self, record: logging.LogRecord) -> bool:
        record.msg, record.args = hide_secrets(record.getMessage()), ()
        return True
