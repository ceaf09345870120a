"""What leaves the house, by which way, and where it stands."""

from enum import StrEnum

ONLY_IN_THE_FOLDER = (
    "Written to the mail folder of this machine: no mail server is set, so it reaches nobody."
)
"""What stands in the log of a mail where no server is set."""

SECRET_PLACE = "{secret}"
"""Stands in a body where the secret comes in when it goes."""


class Channel(StrEnum):
    """The way it goes."""

    MAIL = "mail"
    SMS = "sms"
    WEBHOOK = "webhook"

    @property
    def label(self) -> str:
        return {"mail": "E-mail", "sms": "SMS", "webhook": "Web address"}[self.value]


class Topic(StrEnum):
    """What it is about."""

    INVOICE = "invoice"
    REMINDER = "reminder"
    STATEMENT = "statement"
    REPORT = "report"
    VISIT = "visit"
    CALENDAR = "calendar"
    EVENING = "evening"
    PLAN = "plan"
    WATCH = "watch"
    SIGN_IN = "sign_in"
    VET = "vet"
    ASKED = "asked"
    EVENT = "event"

    @property
    def label(self) -> str:
        return _TOPICS[self]

    @property
    def is_money(self) -> bool:
        return self in (Topic.INVOICE, Topic.REMINDER, Topic.STATEMENT)

    @property
    def tells_money(self) -> bool:
        """Whether its text may name sums: what other programs are told of invoices does as well."""
        return self.is_money or self is Topic.EVENT


class OutgoingState(StrEnum):
    """`WAITING`: it goes as soon as it may, or is tried again. `WENT`: whoever carries it on took it.

    `FAILED`: it was refused, or tried often enough; a person looks at it. `LAPSED`: it came too late to be of use.
    `LEFT`: nobody wants it to go any more.
    """

    WAITING = "waiting"
    GOING = "going"
    WENT = "went"
    FAILED = "failed"
    LAPSED = "lapsed"
    LEFT = "left"

    @property
    def label(self) -> str:
        return _STATES[self]

    @property
    def may_go_again(self) -> bool:
        """Whether a person may have it tried once more."""
        return self in (OutgoingState.FAILED, OutgoingState.LAPSED, OutgoingState.LEFT)


_TOPICS = {
    Topic.INVOICE: "Invoice",
    Topic.REMINDER: "Payment reminder",
    Topic.STATEMENT: "Statement of account",
    Topic.REPORT: "Visit report",
    Topic.VISIT: "Message about a visit",
    Topic.CALENDAR: "Calendar invitation",
    Topic.EVENING: "Evening list",
    Topic.PLAN: "Proposed plan",
    Topic.WATCH: "Lone-worker watch",
    Topic.SIGN_IN: "Link or invitation to sign in",
    Topic.VET: "Link for the vet",
    Topic.ASKED: "Something a farm asked for",
    Topic.EVENT: "Event for another program",
}
_STATES = {
    OutgoingState.WAITING: "Waiting to go",
    OutgoingState.GOING: "Going now",
    OutgoingState.WENT: "Went",
    OutgoingState.FAILED: "Did not go",
    OutgoingState.LAPSED: "Came too late",
    OutgoingState.LEFT: "Left",
}
