"""By when an invoice is to be paid."""

from datetime import date, timedelta


def due_day(issued_on: date, *days: int | None) -> date:
    """The day of issue and the first of `days` that is put down (the farm's own, the payer's, the business's).

    0 is a term too: due the same day. Where none is put down it is due at once.
    """
    return issued_on + timedelta(days=next((term for term in days if term is not None), 0))
