"""The lists that the books of a period are made of."""

from enum import StrEnum


class BookPart(StrEnum):
    """One list of the books; the value is its address and part of its file's name."""

    JOURNAL = "sales-journal"
    TAX = "tax-summary"
    PAYMENTS = "payments"
    WRITE_OFFS = "written-off"
    OPEN = "open"
    MILEAGE = "mileage"

    @property
    def label(self) -> str:
        return _LABELS[self][0]

    @property
    def about(self) -> str:
        return _LABELS[self][1]


_LABELS = {
    BookPart.JOURNAL: (
        "Sales journal",
        "Each invoice and credit note issued, with net and tax at each rate.",
    ),
    BookPart.TAX: ("Tax summary", "Net and tax of the period at each rate."),
    BookPart.PAYMENTS: ("Payments", "Money that came or went back, and what it was set against."),
    BookPart.WRITE_OFFS: ("Written off", "What will not be paid any more, and why."),
    BookPart.OPEN: ("Open at the end", "What was not paid at the end of the last day, by age."),
    BookPart.MILEAGE: ("Mileage", "Drives for the business, with their allowance."),
}
