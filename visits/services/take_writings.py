"""What a phone sends from the crush is taken in: each writing once, a bad one without holding up the rest."""

import logging
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from django.core.exceptions import ValidationError
from django.db import DataError, IntegrityError, transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.domain.crush_merge import Clocks, merge, place
from visits.domain.json_fields import FieldFault
from visits.domain.read_batch import Batch
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.selectors.placed_writings import placed_writings
from visits.services.keep_writings import keep_writings
from visits.services.sift_writings import Arrival, Outcome, Sifted, sift_writings
from visits.services.start_visit import start_visit

log = logging.getLogger(__name__)
CANNOT_BE_KEPT = (IntegrityError, DataError, ValidationError, RuleBroken)


@dataclass(frozen=True)
class Answer:
    """What became of one writing. `shows`: which version of its thing shows now; `beside`: what another phone wrote
    of it without having seen it."""

    uid: str
    outcome: Outcome
    faults: tuple[FieldFault, ...] = ()
    shows: UUID | None = None
    beside: tuple[UUID, ...] = ()


@transaction.atomic
def take_writings(*, visit: Visit, batch: Batch, at: datetime, by: User) -> list[Answer]:
    """Keep what is new and right, in one transaction on the locked visit; one answer for each writing, in order.

    Sending the same again changes nothing. A fault of the database or the program leaves everything as it was.
    """
    row = _begin(visit.locked(), batch, at, by)
    sifted = sift_writings(arrival=Arrival(row, batch, at, by))
    new = [found for found in sifted if found.row]
    if new and not _keep(row, new):
        for found in new:
            _keep_alone(row, found)
    return _answers(row, sifted)


def only_asks(visit: Visit, batch: Batch) -> bool:
    """Whether the batch brings nothing: a phone that looks for what others wrote need not wait for anybody."""
    return not batch.writings and not _is_to_begin(visit, batch)


def _is_to_begin(visit: Visit, batch: Batch) -> bool:
    is_ticked = batch.begun is not None and batch.begun.checked
    return is_ticked and visit.visit_state in (VisitState.PLANNED, VisitState.CONFIRMED)


def _begin(visit: Visit, batch: Batch, at: datetime, by: User) -> Visit:
    """The visit, started if the phone says that it was begun."""
    if batch.begun is None or not _is_to_begin(visit, batch):
        return visit
    began = place(Clocks(batch.begun.at, batch.sent_at, None, at))
    return start_visit(visit=visit, checked=True, at=began, by=by)


def _keep(visit: Visit, new: Sequence[Sifted]) -> bool:
    """All of them at once, or nothing."""
    try:
        with transaction.atomic():
            keep_writings(visit=visit, rows=[found.row for found in new if found.row])
    except CANNOT_BE_KEPT:
        return False
    return True


def _keep_alone(visit: Visit, found: Sifted) -> None:
    """One by itself, so that whatever is wrong with it stays its own affair."""
    try:
        with transaction.atomic():
            if found.row:
                found.row.pk = None
                keep_writings(visit=visit.locked(), rows=[found.row])
    except RuleBroken as broken:
        found.refuse("", broken.message)
    except (IntegrityError, DataError, ValidationError):
        log.exception("a writing could not be kept: %s", found.read.uid)
        found.refuse("", "could not be kept; tell the office")


def _answers(visit: Visit, sifted: Sequence[Sifted]) -> list[Answer]:
    standing = merge(placed_writings(visit.scope, visit))
    by_uid = {str(uid): place for uid, place in standing.items()}
    answers = []
    for found in sifted:
        where = by_uid.get(found.read.uid)
        if where is None or found.outcome is Outcome.REFUSED:
            faults = found.faults or (FieldFault("", "was refused the first time in this sending"),)
            answers.append(Answer(found.read.uid, Outcome.REFUSED, faults))
        else:
            answers.append(Answer(found.read.uid, found.outcome, (), where.shows, where.beside))
    return answers
