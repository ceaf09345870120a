"""A tax number with the letters of its country in front, and whether its check digits hold where a check is known."""

from stdnum import exceptions
from stdnum.eu import vat as eu_vat
from stdnum.gb import vat as gb_vat

# because: Greece is GR in addresses and EL in tax numbers (EN 16931 BR-CO-09)
_PREFIXES = {"GR": "EL"}
_UK = ("GB", "XI")
_KNOWN_PREFIXES = {state.upper() for state in eu_vat.MEMBER_STATES} | {"EL", "GB", "CH", "NO"}


def tax_number_with_country(text: str, country: str) -> str:
    """ "123 456 789" of "GB" gives "GB123456789"; letters of a country that stand there already are left."""
    packed = "".join(sign for sign in text.upper() if sign.isascii() and sign.isalnum())
    prefix = _PREFIXES.get(country, country)
    has_country = packed.startswith(prefix) or packed[:2] in _KNOWN_PREFIXES
    return packed if has_country or not packed else f"{prefix}{packed}"


def tax_number_fault(text: str, country: str) -> str | None:
    """What is wrong with a tax number of the United Kingdom or an EU country, by its check digits; None if nothing is.

    Other countries' numbers are not checked. EU and UK formats by python-stdnum.
    """
    number = tax_number_with_country(text, country)
    if not number:
        return None
    try:
        if number[:2] in _UK:
            gb_vat.validate(number[2:])
        elif number[:2].lower() in {*eu_vat.MEMBER_STATES, "el"}:
            eu_vat.validate(number)
    except exceptions.InvalidChecksum:
        return f"The tax number {number} has a typing mistake: its check digits do not fit."
    except exceptions.ValidationError:
        return f"The tax number {number} is not built as its country builds them."
    return None
