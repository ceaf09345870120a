"""Decimals of a currency (ISO 4217, list of 2026 as in fixtures/standards/iso4217_minor_units.json)."""

# Only what differs from two; the standards test compares this with the whole published list.
OTHER_THAN_TWO: dict[str, int] = {
    **dict.fromkeys(("BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF"), 0),
    **dict.fromkeys(("UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF"), 0),
    **dict.fromkeys(("BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"), 3),
    **dict.fromkeys(("CLF", "UYW"), 4),
}


def minor_digits(currency: str) -> int:
    """Digits after the point in amounts of that currency."""
    return OTHER_THAN_TWO.get(currency, 2)
