"""Invented days to draw as ribbons."""

from datetime import datetime
from zoneinfo import ZoneInfo

from trimops.paper.colours import Meaning
from visits.documents.day_ribbon_content import DayRibbon, RibbonDrive, RibbonVisit

LONDON = ZoneInfo("Europe/London")


def at(hour: int, minute: int = 0) -> datetime:
    return datetime(2026, 12, 1, hour, minute, tzinfo=LONDON)


MILKING = ((at(6), at(8, 30)), (at(15, 30), at(18)))
LONG_NAME = "Gwern-y-Ŵyl & Sons Dairy Farm"

FULL_DAY = DayRibbon(
    "Tuesday 1 December, Ann: 4 farms, 63 cows, home by 16:40",
    at(7),
    at(18),
    (
        RibbonDrive(at(7, 40), at(8, 25), 31.2),
        RibbonDrive(at(11, 35), at(11, 50), 9),
        RibbonDrive(at(13), at(13, 12), 7.2),
        RibbonDrive(at(13, 45), at(13, 55), 5),
        RibbonDrive(at(15, 50), at(16, 40), 33),
    ),
    (
        RibbonVisit("High Thornbeck", at(8, 30), at(11, 35), 28, 0, Meaning.DONE, MILKING),
        RibbonVisit(LONG_NAME, at(11, 50), at(12, 30), 6, 1, Meaning.URGENT, MILKING),
        RibbonVisit("Low Moss", at(13, 12), at(13, 45), 4, 1, Meaning.DUE, MILKING),
        RibbonVisit("Skelder Grange", at(14, 15), at(15, 50), 25, 2, Meaning.PLANNED, MILKING),
    ),
    (at(12, 30), at(13)),
)
EMPTY_DAY = DayRibbon("Wednesday: nothing planned", at(7), at(18))
