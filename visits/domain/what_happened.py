"""What happened in the week, in the words of the week page and in those for the farms."""

from collections.abc import Mapping
from datetime import datetime
from enum import StrEnum


class WhatHappened(StrEnum):
    """Why a week is planned again while it is under way."""

    LATE = "late"
    OUT = "out"
    ILL = "ill"
    CALLED_OFF = "called-off"
    LAME = "lame"

    @property
    def label(self) -> str:
        """As it stands on the button."""
        return _LABELS[self]

    @property
    def help(self) -> str:
        """What it means for the week."""
        return _HELP[self]

    @property
    def to_farms(self) -> str:
        """The reason a farm is given, to follow "because"."""
        return _TO_FARMS[self]


_LABELS: Mapping[WhatHappened, str] = {
    WhatHappened.LATE: "A van is running late",
    WhatHappened.OUT: "A crush or a van is out of action",
    WhatHappened.ILL: "A trimmer is ill",
    WhatHappened.CALLED_OFF: "A farm calls its visit off",
    WhatHappened.LAME: "A lame cow cannot wait",
}
_HELP: Mapping[WhatHappened, str] = {
    WhatHappened.LATE: "The rest of the day is timed again from when the van is free.",
    WhatHappened.OUT: "Its visits go to another van or another day, where they can.",
    WhatHappened.ILL: "The week goes to the other van, where the crews allow.",
    WhatHappened.CALLED_OFF: "The room it leaves is used, if that is worth a change.",
    WhatHappened.LAME: "She is put in where it costs least; as few others move as can be.",
}
_TO_FARMS: Mapping[WhatHappened, str] = {
    WhatHappened.LATE: "the work before is taking longer than planned",
    WhatHappened.OUT: "our kit has broken down",
    WhatHappened.ILL: "our trimmer is ill",
    WhatHappened.CALLED_OFF: "another visit has been called off",
    WhatHappened.LAME: "a lame cow elsewhere cannot wait",
}


def out_words(van: str, because: str, since: datetime, until: datetime) -> str:
    """ "Van 1: crush broken, Tue 3 Mar 11:00 to Wed 4 Mar 12:00"; instants aware, in the zone of the business."""
    last = f"{until:%H:%M}" if since.date() == until.date() else f"{until:%a %-d %b %H:%M}"
    return f"{van}: {because[:1].lower()}{because[1:]}, {since:%a %-d %b %H:%M} to {last}"


def late_words(van: str, farm: str, free: datetime) -> str:
    """ "Van 1 is done at Upper Fold at 14:20 only"."""
    return f"{van} is done at {farm} at {free:%H:%M} only"
