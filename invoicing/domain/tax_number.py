"""A tax number with the letters of its country in front."""

from stdnum.eu import vat as eu_vat

from invoicing.domain.creditor_reference import letters_and_digits

# because: Greece is GR in addresses and EL in tax numbers (EN 16931 BR-CO-09)
_PREFIXES = {"GR": "EL"}
_KNOWN_PREFIXES = {state.upper() for state in eu_vat.MEMBER_STATES} | {"EL", "GB", "CH", "NO"}


def tax_number_with_country(text: str, country: str) -> str:
    """ "123 456 789" of "GB" gives "GB123456789"; letters of a country that stand there already are left."""
    packed = letters_and_digits(text)
    prefix = _PREFIXES.get(country, country)
    has_country = packed.startswith(prefix) or packed[:2] in _KNOWN_PREFIXES
    return packed if has_country or not packed else f"{prefix}{packed}"
