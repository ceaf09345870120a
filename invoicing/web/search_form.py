"""What a list of invoices is narrowed by, as the address says it."""

import re

from django.http import QueryDict

from invoicing.selectors.invoice_rows import Show, Wanted

MOST_WORDS = 100
_YEAR = re.compile("[1-9][0-9]{3}")


def wanted_from(asked: QueryDict) -> Wanted:
    """Words, year and which; what makes no sense is left out, so that every address shows a page."""
    year = asked.get("year", "")
    show = asked.get("show", "")
    return Wanted(
        words=asked.get("q", "").replace("\x00", "")[:MOST_WORDS].strip(),
        year=int(year) if _YEAR.fullmatch(year) else None,
        show=Show(show) if show in list(Show) else Show.ALL,
    )
