"""What is known of a country's tax, to be offered and checked."""

from functools import cache
from pathlib import Path

from invoicing.domain.tax_scheme import TaxScheme, read_schemes

DATA = Path(__file__).parent.parent / "data" / "tax_schemes.json"


def tax_scheme_of(country: str) -> TaxScheme | None:
    """By the two letters of ISO 3166-1; None where nothing is put down for the country."""
    return _schemes().get(country)


@cache
def _schemes() -> dict[str, TaxScheme]:
    return read_schemes(DATA.read_text(encoding="utf-8"))
