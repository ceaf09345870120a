"""Where a watch over somebody who works alone stands, how it ends, and how people are told."""

from enum import StrEnum


class WatchState(StrEnum):
    """`ASKED`: the trimmer was asked whether all is well. `TOLD`: nobody answered, so others were told."""

    WATCHING = "watching"
    ASKED = "asked"
    TOLD = "told"
    ENDED = "ended"

    @property
    def label(self) -> str:
        return {"watching": "Watching", "asked": "Asked", "told": "Others told", "ended": "Over"}[self.value]


class WatchEnd(StrEnum):
    """Why a watch is over."""

    FINISHED = "finished"
    WELL = "well"
    FOUND = "found"
    CALLED_OFF = "called_off"
    NOT_THERE = "not_there"
    TRIED = "tried"

    @property
    def label(self) -> str:
        return _ENDS[self.value]


class CalledBy(StrEnum):
    """The way a person is told."""

    MAIL = "mail"
    SMS = "sms"
    BOTH = "both"

    @property
    def label(self) -> str:
        return {"mail": "E-mail", "sms": "SMS", "both": "E-mail and SMS"}[self.value]


class CallAnswer(StrEnum):
    """What somebody said who was asked or told, by the link that they were sent."""

    WELL_ON = "well_on"
    WELL_DONE = "well_done"
    TAKES = "takes"
    FOUND = "found"
    CANNOT = "cannot"

    @property
    def label(self) -> str:
        return _ANSWERS[self.value]


_ENDS = {
    "finished": "The visit was finished",
    "well": "The trimmer said that all is well",
    "found": "Somebody spoke to the trimmer",
    "called_off": "The visit was called off or put off",
    "not_there": "The visit has another hour now",
    "tried": "It was only a test",
}
_ANSWERS = {
    "well_on": "I am well, 30 minutes more",
    "well_done": "I am well, finished",
    "takes": "I see to it now",
    "found": "I spoke to the trimmer: all is well",
    "cannot": "I cannot: tell the next one",
}
