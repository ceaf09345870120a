"""In which currency a country wants the tax told, whatever the invoice is in.

Directive 2006/112/EC art. 230 (national currency of the member state) and the VAT Regulations 1995 (SI 1995/2518) reg
14(1) (sterling), both from memory; currencies of ISO 4217. For other countries nothing is asked: ask your accountant.
"""

from decimal import Decimal

from invoicing.domain.minor_units import minor_digits
from trimops.kernel.money import round_money

_EURO = "AT BE BG CY DE EE ES FI FR GR HR IE IT LT LU LV MT NL PT SI SK"
_OWN = {
    "CZ": "CZK",
    "DK": "DKK",
    "GB": "GBP",
    "HU": "HUF",
    "IM": "GBP",
    "PL": "PLN",
    "RO": "RON",
    "SE": "SEK",
}
_TAX_CURRENCY = dict.fromkeys(_EURO.split(), "EUR") | _OWN


def home_currency(country: str, currency: str) -> str:
    """The currency in which the tax must be told besides `currency`; empty where none other is asked."""
    own = _TAX_CURRENCY.get(country.upper(), "")
    return "" if own == currency else own


def tax_at_home(tax: Decimal, rate: Decimal, currency: str) -> Decimal:
    """`rate`: what one unit of the invoice's currency is in `currency`."""
    return round_money(tax * rate, minor_digits(currency))
