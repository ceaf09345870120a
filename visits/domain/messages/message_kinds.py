"""What a farm is told by itself, and which places each text may use."""

from enum import StrEnum


class MessageKind(StrEnum):
    """One kind of message to a farm."""

    BOOKED = "booked"
    MOVED = "moved"
    PUT_OFF = "put_off"
    CALLED_OFF = "called_off"
    TOMORROW = "tomorrow"
    ON_THE_WAY = "on_the_way"
    LATE = "late"
    REPORT = "report"

    @property
    def label(self) -> str:
        return _LABELS[self]

    @property
    def when(self) -> str:
        """The moment at which it goes, as a sentence."""
        return _WHEN[self]

    @property
    def places(self) -> tuple[str, ...]:
        """Names that its text may hold between braces."""
        return (*EVERYWHERE, *_PLACES[self])

    def needs(self, part: str) -> tuple[str, ...]:
        """Places without which a part (subject, body, short) of the text is of no use."""
        return ("link",) if self is MessageKind.REPORT and part == "body" else ()

    @property
    def is_switched(self) -> bool:
        """Whether the business switches it on; a report goes to whoever gets reports, as each contact says."""
        return self is not MessageKind.REPORT

    @property
    def tells_hour(self) -> bool:
        """Whether the farm counts on the visit's hour once it is told."""
        return self in (MessageKind.BOOKED, MessageKind.MOVED, MessageKind.TOMORROW)

    @property
    def takes_back(self) -> bool:
        """Whether it says that the hour the farm counted on is gone."""
        return self in (MessageKind.PUT_OFF, MessageKind.CALLED_OFF)


ABOUT_HOUR = (MessageKind.BOOKED, MessageKind.MOVED, MessageKind.PUT_OFF, MessageKind.CALLED_OFF)
"""Those that follow the diary."""
EVERYWHERE = ("farm", "business", "phone")
WHAT_PLACES_HOLD = {
    "farm": "the farm's name",
    "business": "your business's name",
    "phone": "your business's phone number",
    "trimmer": "who comes",
    "day": "the day, such as Tuesday 3 March, in the language of the text",
    "hour": "the hour, such as 09:40",
    "before": "day and hour that the farm counted on",
    "from": "the earliest that you likely arrive",
    "until": "the latest that you likely arrive",
    "minutes": "on the way: minutes until you arrive; late: minutes later than told",
    "cows": "how many cows",
    "list": "the cows to bring; in an SMS their numbers alone",
    "link": "an address that opens the list, or the report",
    "report": "what is the vet's and when blocks come off",
}
_LABELS = {
    MessageKind.BOOKED: "Visit booked",
    MessageKind.MOVED: "Visit moved",
    MessageKind.PUT_OFF: "Visit put off",
    MessageKind.CALLED_OFF: "Visit called off",
    MessageKind.TOMORROW: "Tomorrow",
    MessageKind.ON_THE_WAY: "On the way",
    MessageKind.LATE: "Running late",
    MessageKind.REPORT: "Report ready",
}
_WHEN = {
    MessageKind.BOOKED: "Two minutes after a visit gets its hour: by a plan you accept, by hand, or by an offer taken.",
    MessageKind.MOVED: "Two minutes after a told hour moves to another day, or by ten minutes and more.",
    MessageKind.PUT_OFF: "Two minutes after a visit whose hour was told loses it.",
    MessageKind.CALLED_OFF: "Two minutes after a visit whose hour was told is called off.",
    MessageKind.TOMORROW: "The day before, at an hour of your choice: when you likely arrive, and the draft list.",
    MessageKind.ON_THE_WAY: "When the visit before it is finished.",
    MessageKind.LATE: "When the day so far says that you come later than the farm was told.",
    MessageKind.REPORT: "When a report is issued, to everybody who gets reports.",
}
_PLACES = {
    MessageKind.BOOKED: ("day", "hour", "cows", "trimmer"),
    MessageKind.MOVED: ("day", "hour", "before", "cows", "trimmer"),
    MessageKind.PUT_OFF: ("day", "hour"),
    MessageKind.CALLED_OFF: ("day", "hour"),
    MessageKind.TOMORROW: ("day", "hour", "from", "until", "cows", "list", "link", "trimmer"),
    MessageKind.ON_THE_WAY: ("from", "until", "minutes", "cows", "trimmer"),
    MessageKind.LATE: ("hour", "from", "until", "minutes", "cows", "trimmer"),
    MessageKind.REPORT: ("day", "report", "link"),
}
