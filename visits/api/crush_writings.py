"""Where a phone at the crush sends what was put down, and is told what other phones have sent."""

from collections.abc import Mapping

from rest_framework.exceptions import ParseError
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.accounts.actions import Action
from trimops.api.op import Op
from trimops.api.view import MOST_BYTES, Api
from trimops.web.refusals import Malformed, TooLarge
from visits.api.crush_words import CrushBatchShown, CrushBatchWord
from visits.domain.read_batch import MOST_WRITINGS, Batch, read_batch
from visits.models import Visit
from visits.selectors.crush_writings import writings_of
from visits.services.take_writings import Answer, only_asks, take_writings


class CrushWritingsApi(Api):
    """Takes what was noted at the crush, and tells what other phones have sent: at most 100 writings and 2 MB. Safe
    to repeat, in any order, without an Idempotency-Key: each writing has its id, is kept once and never changed. A
    later version or a taking back is another writing of the same `record`; which one shows is decided from the
    writings alone. What harms the cow is refused, such as a block on the sore claw; nothing here diagnoses, doses
    or prescribes."""

    ops = {
        "post": Op(
            Action.WORK_AT_CRUSH,
            "send_writings",
            "Send what was noted at the crush",
            takes=CrushBatchWord,
            shows=CrushBatchShown,
        )
    }

    def post(self, request: Request, pk: int) -> Response:
        visit = self.fetch(Visit, pk, "business", "farm")
        batch = _batch_of(request)
        answers = self._take(visit, batch)
        others = writings_of(self.scope, visit, seen=batch.seen, not_by_phone=batch.phone)
        visit = self.fetch(Visit, pk)
        return Response(
            {
                "now": self.now.isoformat(),
                "cursor": others.cursor,
                "more": others.has_more,
                "visit": _state_of(visit),
                "answers": [_answer(answer) for answer in answers],
                "others": others.rows,
            }
        )

    def _take(self, visit: Visit, batch: Batch) -> list[Answer]:
        if only_asks(visit, batch):
            return []
        return take_writings(visit=visit, batch=batch, at=self.now, by=self.seat.user)


def _batch_of(request: Request) -> Batch:
    """The envelope; TooLarge (413) before it is read, Malformed (400) with the field where it cannot be used."""
    if int(request.META.get("CONTENT_LENGTH") or 0) > MOST_BYTES:
        raise TooLarge(f"At most {MOST_BYTES} bytes at once.")
    try:
        sent = request.data
    except RecursionError:
        raise ParseError("Nested too deeply.") from None
    writings = sent.get("writings") if isinstance(sent, Mapping) else None
    if isinstance(writings, list) and len(writings) > MOST_WRITINGS:
        raise TooLarge(f"At most {MOST_WRITINGS} writings at once.")
    batch, faults = read_batch(sent)
    if faults:
        raise Malformed([(fault.field, fault.reason) for fault in faults])
    return batch


def _state_of(visit: Visit) -> dict[str, object]:
    return {
        "state": visit.state,
        "started_at": visit.started_at.isoformat() if visit.started_at else None,
        "finished_at": visit.finished_at.isoformat() if visit.finished_at else None,
    }


def _answer(answer: Answer) -> dict[str, object]:
    return {
        "uid": answer.uid,
        "outcome": answer.outcome.value,
        "faults": [{"field": fault.field, "reason": fault.reason} for fault in answer.faults],
        "shows": str(answer.shows) if answer.shows else None,
        "beside": [str(uid) for uid in answer.beside],
    }
