"""Where a paper on its way stands."""

from enum import StrEnum

ONLY_IN_THE_FOLDER = (
    "Written to the mail folder of this machine: no mail server is set, so it reaches nobody."
)
"""What stands in the log of a mail where no server is set."""


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

    @property
    def may_go_again(self) -> bool:
        """Whether a person may have the same mail sent once more; what went is sent anew instead."""
        return self in (SendingState.FAILED, SendingState.UNCLEAR)


_LABELS = {
    SendingState.QUEUED: "Waiting to go",
    SendingState.GOING: "Going now",
    SendingState.HANDED_OVER: "Handed over",
    SendingState.FAILED: "Did not go",
    SendingState.UNCLEAR: "Not known whether it went",
}
