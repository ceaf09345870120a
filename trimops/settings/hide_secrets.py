"""Keeps addresses that are their own key out of the log."""

import logging
import re

# A segment of an address that is nothing but many letters of a token (they have 43 or more; words have hyphens and
# dots, and seldom so many). What stands in a log can be read by more people than the one who was sent the link.
TOKEN = re.compile(r"(?<=/)[A-Za-z0-9_:=~-]{24,}(?=[/?#\s\"']|$)")


class HideSecrets(logging.Filter):
    """Writes an ellipsis for each token in what is logged of a request."""

    def filter(self, record: logging.LogRecord) -> bool:
        record.msg, record.args = TOKEN.sub("...", record.getMessage()), ()
        return True
