"""How an invoice is settled."""

from enum import StrEnum


class PaymentMethod(StrEnum):
    """How money came."""

    BANK = "bank"
    CASH = "cash"
    CARD = "card"
    CHEQUE = "cheque"
    OTHER = "other"

    @property
    def label(self) -> str:
        return _METHODS[self]


class SettledBy(StrEnum):
    """What was set against an invoice."""

    PAYMENT = "payment"
    CREDIT = "credit"
    WRITE_OFF = "write_off"

    @property
    def label(self) -> str:
        return _SETTLED[self]


_METHODS = {
    PaymentMethod.BANK: "Bank transfer",
    PaymentMethod.CASH: "Cash",
    PaymentMethod.CARD: "Card",
    PaymentMethod.CHEQUE: "Cheque",
    PaymentMethod.OTHER: "Otherwise",
}
_SETTLED = {
    SettledBy.PAYMENT: "Payment",
    SettledBy.CREDIT: "Credit note",
    SettledBy.WRITE_OFF: "Written off",
}
