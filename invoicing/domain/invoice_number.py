"""How an invoice number is written."""


def invoice_number(prefix: str, year: int, counter: int) -> str:
    """Prefix, year of issue, running number of at least four digits: INV-2026-0042. ValueError below 1."""
    if counter < 1:
        raise ValueError("invoice numbers start at 1")
    return f"{prefix}-{year}-{counter:04d}"
