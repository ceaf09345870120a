"""What a list of invoices is narrowed by, as the address says it."""

import re

from django.http import QueryDict

from invoicing.selectors.invoice_rows import Show, Wanted
from trimops.web.asked import words_asked

MOST_WORDS = 100
_YEAR = re.compile("[1-9][0-9]{3}")


def wanted_from(asked: QueryDict) -> Wanted:
    """Words, year and which; what makes no sense is left out, so that every address shows a page."""
    year = asked.get("year", "")
    show = asked.get("show", "")
    return Wanted(
        words=words_asked(asked, MOST_WORDS),
        year=int(year) if _YEAR.fullmatch(year) else None,
        show=Show(show) if show in list(Show) else Show.ALL,
    )
