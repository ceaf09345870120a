"""A table as CSV that a spreadsheet opens rightly and that runs nothing.

RFC 4180, UTF-8 with the mark that tells spreadsheets so, days as ISO 8601. A spreadsheet runs a cell that begins with
= + - @ (or a tab or a line end before them) as a formula, and a cow's note may hold anything. So a text that
begins with one of these, or with an apostrophe, gets an apostrophe in front; whoever reads the file takes one off.
Where a semicolon parts cells, one in a text parts it too: what follows it is kept from running in the same way.
"""

import csv
import io
import re
from functools import lru_cache

from visits.documents.data_table import DataTable

ENCODING = "utf-8-sig"
_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "'", "\uff1d", "\uff0b", "\uff0d", "\uff20")
"""The last four are the wide forms, which some spreadsheets take for the same."""
_STARTS_WITHIN = re.compile("(;)(?=[=+\\-@\uff1d\uff0b\uff0d\uff20])")


def csv_file(table: DataTable) -> bytes:
    """The table with its headings."""
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(table.headings)
    # Nothing is written as nothing, a day and a number as they are told: so the writer does by itself.
    writer.writerows(
        [_defused(cell) if isinstance(cell, str) else cell for cell in row] for row in table.rows
    )
    return out.getvalue().encode(ENCODING)


@lru_cache(10_000)
def _defused(text: str) -> str:
    text = _STARTS_WITHIN.sub(r"\1'", text.replace("\0", ""))
    return f"'{text}" if text.startswith(_STARTS) else text
