"""How often a farm is billed."""

from enum import StrEnum


class BillingRhythm(StrEnum):
    """One invoice for what."""

    VISIT = "visit"
    MONTH = "month"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    BillingRhythm.VISIT: "Each visit",
    BillingRhythm.MONTH: "Each month",
}
