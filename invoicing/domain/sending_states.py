"""Where a paper on its way stands."""

from enum import StrEnum


class SentPaper(StrEnum):
    """What is sent."""

    INVOICE = "invoice"
    REMINDER = "reminder"
    STATEMENT = "statement"

    @property
    def label(self) -> str:
        return {"invoice": "Invoice", "reminder": "Reminder", "statement": "Statement of account"}[self.value]


class SendingState(StrEnum):
    """`GOING`: it is being handed to the mail server now. `UNCLEAR`: nobody can tell whether the server took it."""

    QUEUED = "queued"
    GOING = "going"
    HANDED_OVER = "handed_over"
    FAILED = "failed"
    UNCLEAR = "unclear"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    SendingState.QUEUED: "Waiting to go",
    SendingState.GOING: "Going now",
    SendingState.HANDED_OVER: "Handed over to the mail server",
    SendingState.FAILED: "Did not go",
    SendingState.UNCLEAR: "Not known whether it went",
}
