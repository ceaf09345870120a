"""The number for an emergency, by country. From memory; 112 in the EU: Directive (EU) 2018/1972, article 109."""

EU = (
    *("AT", "BE", "BG", "HR", "CY", "CZ", "DK", "EE", "FI", "FR", "DE", "GR", "HU", "IE", "IT", "LV", "LT"),
    *("LU", "MT", "NL", "PL", "PT", "RO", "SK", "SI", "ES", "SE"),
)
NUMBERS: dict[str, str] = {
    **dict.fromkeys(EU, "112"),
    **dict.fromkeys(("IS", "LI", "NO", "CH", "TR", "UA", "ZA", "IN"), "112"),
    **dict.fromkeys(("GB", "GG", "IM", "JE"), "999"),
    **dict.fromkeys(("US", "CA", "MX", "UY", "AR"), "911"),
    "AU": "000",
    "NZ": "111",
    "BR": "192",
    "CL": "131",
    "JP": "119",
}
UNKNOWN = "the emergency number of the country"


def emergency_number(country: str) -> str:
    """Of an ISO 3166-1 country, as it is dialled there (112 works beside it in most); words where it is not known."""
    return NUMBERS.get(country.upper(), UNKNOWN)
