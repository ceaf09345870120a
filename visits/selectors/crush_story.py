"""What came from the crush besides the cows: wash-downs, pictures, cows taken back."""

from dataclasses import dataclass

from trimops.kernel.scope import Scope
from visits.models import Trim, TrimPhoto, Visit, WashDown


@dataclass(frozen=True)
class CrushStory:
    """All of one visit; the pictures without their bytes, each with its cow where she has arrived."""

    wash_downs: list[WashDown]
    photos: list[TrimPhoto]
    taken_back: list[Trim]


def crush_story(scope: Scope, visit: Visit) -> CrushStory:
    """Three queries."""
    photos = TrimPhoto.objects.within(scope).filter(visit=visit).defer("picture")
    gone = Trim.objects.with_taken_back(scope).filter(visit=visit, taken_back_at__isnull=False)
    return CrushStory(
        wash_downs=wash_downs_of(scope, visit),
        photos=list(photos.select_related("trim__cow")),
        taken_back=list(gone.select_related("cow", "recorded_by")),
    )


def wash_downs_of(scope: Scope, visit: Visit) -> list[WashDown]:
    """The wash-downs of the visit in the order in which they were done."""
    return list(WashDown.objects.within(scope).filter(visit=visit).select_related("by", "consumable"))
