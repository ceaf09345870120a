"""What a country's tax looks like, as data; and whether a rate can stand on an invoice."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from invoicing.domain.code_lists import EXEMPTION_CODES

CHARGED = "S"
NEEDS_A_REASON = frozenset({"E", "AE", "O"})


@dataclass(frozen=True)
class TaxSuggestion:
    """A rate as a country has it. `source` says where it was read; the business checks it and may change it."""

    code: str
    name: str
    category: str
    percent: Decimal
    valid_from: date
    source: str
    reason: str = ""
    reason_code: str = ""


@dataclass(frozen=True)
class TaxScheme:
    """A country's tax: its name, what the number of who is registered is called, and its rates."""

    country: str
    name: str
    tax_name: str
    number_label: str
    rates: tuple[TaxSuggestion, ...]


@dataclass(frozen=True)
class RateFault:
    """What of a rate cannot stand on an invoice: the field, and what to mend."""

    field: str
    message: str


def read_schemes(text: str) -> dict[str, TaxScheme]:
    """By country code, from the JSON of `invoicing/data/tax_schemes.json`; what is for all countries is in each."""
    told = json.loads(text)
    return {
        row["country"]: TaxScheme(
            row["country"],
            row["name"],
            row["tax_name"],
            row["number_label"],
            tuple(_suggestion(rate, told) for rate in [*row["rates"], *told["everywhere"]]),
        )
        for row in told["countries"]
    }


def _suggestion(rate: Mapping[str, str], told: Mapping[str, str]) -> TaxSuggestion:
    return TaxSuggestion(
        rate["code"],
        rate["name"],
        rate["category"],
        Decimal(rate["percent"]),
        date.fromisoformat(rate["valid_from"]),
        rate.get("source", told["source"]),
        rate.get("reason", ""),
        rate.get("reason_code", ""),
    )


def rate_fault(category: str, percent: Decimal, reason: str = "", reason_code: str = "") -> RateFault | None:
    """None when the rate can stand on an invoice (EN 16931: -05 and -10 of each category, BR-CL-22)."""
    if category == CHARGED and not percent:
        return RateFault(
            "percent", "A rate that is charged is above 0. For 0 choose zero rated, exempt or outside."
        )
    if category != CHARGED and percent:
        return RateFault("percent", "No tax is charged then: the percent is 0.")
    if category in NEEDS_A_REASON and not (reason.strip() or reason_code):
        return RateFault("reason", "Say why no tax is charged: it must stand on the invoice.")
    if category not in NEEDS_A_REASON and (reason.strip() or reason_code):
        return RateFault("reason", "Only where no tax is charged is a reason given: leave it empty.")
    if reason_code and reason_code not in EXEMPTION_CODES:
        return RateFault(
            "reason_code", f"“{reason_code}” is not in the VATEX list of EN 16931: leave it empty if unsure."
        )
    return None
