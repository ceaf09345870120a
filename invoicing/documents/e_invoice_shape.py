"""Values as the e-invoice library takes them: dictionaries of business terms, every figure a text."""

from datetime import date
from decimal import Decimal
from typing import TypeAlias

from trimops.kernel.money import round_money
from trimops.kernel.xml_signs import NOT_IN_XML

Term: TypeAlias = "str | date | Terms | list[Terms]"
Terms: TypeAlias = dict[str, "Term"]


def amount_text(amount: Decimal, digits: int) -> str:
    """An amount with the decimals of its currency, never "-0.00"."""
    return f"{round_money(amount, digits) + 0:f}"


def number_text(number: Decimal) -> str:
    """A quantity, price or percent without idle noughts: 20.00 is "20"."""
    return f"{number.normalize() + 0:f}"


def xml_text(text: str) -> str:
    """The text without signs that XML cannot hold and without blanks around it; may be nothing."""
    return NOT_IN_XML.sub(" ", text).strip()


def tidy(terms: Terms) -> Terms:
    """Without empty terms; texts as `xml_text` leaves them."""
    tidied = {key: _tidy(term) for key, term in terms.items()}
    return {key: term for key, term in tidied.items() if term}


def _tidy(term: Term) -> Term:
    if isinstance(term, str):
        return xml_text(term)
    if isinstance(term, dict):
        return tidy(term)
    if isinstance(term, list):
        return [tidied for tidied in map(tidy, term) if tidied]
    return term
