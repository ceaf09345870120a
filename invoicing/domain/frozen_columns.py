"""What of an issued paper may never change again, and the words of who says so."""

from collections.abc import Iterable

STILL_CHANGE = frozenset({"settled", "is_open"})
"""Of an issued invoice: what was paid lies outside of the paper the buyer has."""

INVOICE_STAYS = "An issued invoice is never changed: correct it by a credit note."
LINES_STAY = "The lines of an issued invoice are never changed: correct it by a credit note."
PAPERS_STAY = "The papers of an invoice are kept as they left the house."


def frozen_columns(columns: Iterable[str]) -> list[str]:
    """Of all columns of an invoice those that are frozen by issuing it, in their order."""
    return [column for column in columns if column not in STILL_CHANGE]
