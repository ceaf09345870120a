"""Papers of the money that go by mail."""

from enum import StrEnum

from trimops.outbox.domain.outgoing_states import Topic


class SentPaper(StrEnum):
    """What is sent."""

    INVOICE = "invoice"
    REMINDER = "reminder"
    STATEMENT = "statement"

    @property
    def label(self) -> str:
        return {"invoice": "Invoice", "reminder": "Reminder", "statement": "Statement of account"}[self.value]

    @property
    def topic(self) -> Topic:
        """What its mail is about."""
        return Topic(self.value)
