"""The sign-off of a visit: the first one finishes it, a later one only changes the words."""

from collections.abc import Sequence

from visits.domain.crush_merge import merge
from visits.domain.crush_writing import WritingKind
from visits.domain.visit_states import VisitState
from visits.domain.writing_content import SignOffContent
from visits.models import CrushWriting, Visit
from visits.selectors.placed_writings import placed_writings
from visits.services.finish_visit import SignOff, change_sign_off, finish_visit
from visits.services.shown_writing import ShownWriting


def show_sign_off(*, visit: Visit, shown: Sequence[ShownWriting]) -> None:
    """The words of the greatest sign-off of any phone; VisitCannotMove unless the visit is under way or finished."""
    last = _last(visit)
    content = last.content()
    if not isinstance(content, SignOffContent):
        return
    words = SignOff(
        signed_by=content.received_by,
        washed_down=content.washed_down,
        hygiene_note=content.hygiene_note,
        was_done=content.was_done,
        farm_to_do=content.farm_to_do,
    )
    if visit.visit_state is VisitState.FINISHED:
        change_sign_off(visit=visit, sign_off=words, at=last.row.received_at)
        return
    at = max(last.at, visit.started_at or last.at)
    finished = finish_visit(visit=visit, sign_off=words, at=at, by=last.row.by)
    visit.state, visit.finished_at = finished.state, finished.finished_at


def _last(visit: Visit) -> ShownWriting:
    of_kind = f"{WritingKind.SIGN_OFF} "
    standing = merge(w for w in placed_writings(visit.scope, visit) if w.group.startswith(of_kind))
    uid, place = max(standing.items(), key=lambda item: (item[1].effective, item[0]))
    row = CrushWriting.objects.within(visit.scope).select_related("by").get(uid=uid)
    return ShownWriting(row, place.effective, place.begun, 1, row.received_at)
