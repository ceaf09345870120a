"""A photo of a foot comes in from the crush, before or after its cow."""

import hashlib
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from django.db import transaction

from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.paper.picture_anew import PictureUnreadable, picture_anew
from visits.domain.feet import Foot
from visits.models import TrimPhoto, Visit
from visits.services.link_photos import link_photos


class PhotoOfAnotherVisit(RuleBroken):
    """That id belongs to a photo of another visit."""

    code = "photo_of_another_visit"


class PhotoUnreadable(RuleBroken):
    """The bytes begin and end like a JPEG and are no picture."""

    code = "photo_unreadable"


@dataclass(frozen=True)
class SentPhoto:
    """A JPEG of a foot, the record of its cow as the phone names it, and when it was taken (our clock)."""

    uid: UUID
    record: UUID
    foot: Foot | None
    taken_at: datetime
    picture: bytes


def save_photo(*, visit: Visit, photo: SentPhoto, at: datetime, by: User) -> tuple[TrimPhoto, bool]:
    """The photo as kept, and whether it is new; sent again, the first one stays. Joined to its cow if she is here.

    Kept is the picture drawn anew (`picture_anew`); `size` and `sha256` tell what the phone sent. PhotoUnreadable.
    """
    try:
        picture = picture_anew(
            photo.picture
        )  # because: it takes some 40 ms, in which nobody shall wait for the visit
    except PictureUnreadable as fault:
        raise PhotoUnreadable(f"The photo {fault}: take it again.") from fault
    return _save(visit, photo, picture, at, by)


@transaction.atomic
def _save(visit: Visit, photo: SentPhoto, picture: bytes, at: datetime, by: User) -> tuple[TrimPhoto, bool]:
    row = visit.locked()
    known = TrimPhoto.objects.within(row.scope).filter(uid=photo.uid).defer("picture").first()
    if known is not None:
        if known.visit_id != row.pk:
            raise PhotoOfAnotherVisit("This photo was sent for another visit.")
        return known, False
    refuse_erased(farm=row.farm)
    kept = TrimPhoto(
        business_id=row.business_id,
        uid=photo.uid,
        visit=row,
        record=photo.record,
        foot=photo.foot.value if photo.foot else "",
        taken_at=photo.taken_at,
        received_at=at,
        by=by,
        size=len(photo.picture),
        sha256=hashlib.sha256(photo.picture).hexdigest(),
        picture=picture,
    )
    kept.full_clean()
    kept.save()
    link_photos(visit=row)
    kept.refresh_from_db(fields=["trim"])
    return kept, True
