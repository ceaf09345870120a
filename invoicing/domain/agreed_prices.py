"""What was agreed with one farm changes the price of its lines."""

from enum import StrEnum


class AgreementKind(StrEnum):
    """What an agreement says."""

    PERCENT = "percent"
    PRICE = "price"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    AgreementKind.PERCENT: "Percent off",
    AgreementKind.PRICE: "A price of its own",
}
