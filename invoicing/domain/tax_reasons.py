"""Why no tax is charged, in the words and codes of EN 16931."""

# because: these two have one meaning each (BR-AE-10, BR-O-10); why something is exempt only the business knows
_MEANT = {
    "AE": ("Reverse charge", "VATEX-EU-AE"),
    "O": ("Not subject to VAT", "VATEX-EU-O"),
}


def reason_and_code(category: str, reason: str, code: str) -> tuple[str, str]:
    """Text (BT-120) and code of the VATEX list (BT-121) as handed in; where neither was, what the category means."""
    return (reason, code) if reason or code else _MEANT.get(category, ("", ""))
