"""The end of the recorded visit, as a phone would send it: the wash-down, then the sign-off with its words."""

from collections.abc import Iterable
from datetime import datetime, timedelta
from decimal import Decimal
from uuid import UUID, uuid5

from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from visits.domain.cautions import FOR_THE_FARM
from visits.domain.crush_writing import WritingKind
from visits.domain.writing_content import Content, SignOffContent, WashContent, content_json
from visits.models import CrushWriting, Referral, Trim, Visit
from visits.selectors.visit_story import VisitStory, visit_story
from visits.services.keep_writings import keep_writings

PHONE = UUID("0190f3a0-0000-7000-8000-000000000001")
WASHED_BEFORE = timedelta(minutes=10)
WASHED_WITH = ("potassium peroxymonosulphate", "1:100", Decimal(10))


def sign_off_as_by_phone(visit: Visit, end: datetime, by: User) -> Visit:
    """Washed down, signed off and so finished at `end`; the visit as it is then."""
    washed = end - WASHED_BEFORE
    wash = WashContent(*WASHED_WITH, washed_at=washed)
    story = visit_story(visit.scope, visit)
    signed = SignOffContent(
        received_by="the herd manager",
        was_done=was_done(story.trims),
        farm_to_do=farm_to_do(story, visit),
        washed_down=True,
        hygiene_note="boots and overalls changed",
    )
    row = visit.locked()
    _keep(row, WritingKind.WASH, wash, washed, by)
    _keep(row, WritingKind.SIGN_OFF, signed, end, by)
    fresh = Visit.objects.within(visit.scope).select_related("farm__business", "business", "van__trimmer")
    return fresh.get(pk=visit.pk)


def was_done(trims: Iterable[Trim]) -> str:
    """ "12 cows: 9 functional trim, 3 corrective trim." """
    kinds = [trim.get_kind_display() for trim in trims]
    counted = ", ".join(f"{kinds.count(kind)} {kind}" for kind in dict.fromkeys(kinds))
    return f"{len(kinds)} cows: {counted}."


def farm_to_do(story: VisitStory, visit: Visit) -> str:
    """The vet first, then the blocks with their days, then the usual cautions; a line each."""
    lines = [f"Ring the vet today: {_cows(story.referrals)}."] if story.referrals else []
    today = local_day(visit.started_at or visit.changed_at, visit.business.zone)
    for day in sorted({block.off_due for block in story.blocks if block.off_due > today}):
        numbers = sorted({block.cow.number for block in story.blocks if block.off_due == day})
        lines.append(f"Blocks off by {day:%a %-d %b}: cow {', '.join(numbers)}.")
    return "\n".join([*lines, *FOR_THE_FARM])


def _cows(referrals: Iterable[Referral]) -> str:
    return "cow " + ", ".join(dict.fromkeys(row.trim.cow.number for row in referrals))


def _keep(visit: Visit, kind: WritingKind, content: Content, at: datetime, by: User) -> None:
    uid = uuid5(PHONE, f"{visit.pk} {kind}")
    times = {"made_at": at, "placed_at": at, "received_at": at}
    row = CrushWriting(
        business_id=visit.business_id,
        uid=uid,
        visit=visit,
        kind=kind.value,
        record=uid,
        content=content_json(content),
        phone=PHONE,
        by=by,
        **times,
    )
    keep_writings(visit=visit, rows=[row])
