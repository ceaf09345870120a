"""The day as a ribbon: one drawing, laid across for a desk and print, down for a phone."""

from trimops.paper.drawing import Drawing
from visits.documents.day_ribbon_content import DayRibbon
from visits.documents.ribbon_across import ribbon_across
from visits.documents.ribbon_down import ribbon_down

PHONE_WIDTH = 87.0
"""360 px less two margins of 16 px, in mm at 96 px to the inch."""

NARROWEST_ACROSS = 150.0


def day_ribbon(day: DayRibbon, width: float = 250.0) -> Drawing:
    """The day `width` mm wide (1 mm = 3.78 px). ValueError when the axis has no length or an instant is naive."""
    if day.begins.tzinfo is None or day.ends.tzinfo is None:
        raise ValueError("the ends of the day have no time zone")
    if day.ends <= day.begins:
        raise ValueError("the day ends before it begins")
    return ribbon_across(day, width) if width >= NARROWEST_ACROSS else ribbon_down(day, width)
