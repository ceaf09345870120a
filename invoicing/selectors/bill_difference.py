"""What has changed of a visit's work since it was billed."""

from collections.abc import Sequence
from dataclasses import dataclass

from invoicing.domain.pricing import NoPrice, PriceItem
from invoicing.domain.visit_work import WorkPiece, visit_key
from invoicing.domain.work_difference import work_difference
from invoicing.models import BilledWork
from invoicing.selectors.draft_work import PricedWork, as_claim, claims_on, priced_work
from invoicing.selectors.visit_work import visit_work
from visits.models import Visit


@dataclass(frozen=True)
class BillDifference:
    """`added`: work that nothing bills. `gone`: claims on work that is no longer there and is not being credited."""

    visit: Visit
    added: tuple[WorkPiece, ...]
    gone: tuple[BilledWork, ...]

    def __bool__(self) -> bool:
        return bool(self.added or self.gone)


def bill_difference(visit: Visit) -> BillDifference:
    """Claims held against the work as it is now; empty for a visit that nothing bills, or of a farm that was erased:
    of its work only the claims are left.

    A cow that is now of another kind is one piece gone and one added. What costs nothing at the prices of its day is
    not added. What a visit is charged for as a whole goes when all of its work is gone.
    """
    claims = claims_on(visit.scope, [visit])
    if not claims or visit.farm.erased_at is not None:
        return BillDifference(visit, (), ())
    pieces = visit_work(visit).pieces
    of_pieces = [row for row in claims if _is_of_a_piece(row, visit)]
    found = work_difference(pieces, [as_claim(row) for row in of_pieces])
    lost = {claim.claim_id for claim in found.gone}
    gone = [row for row in of_pieces if row.pk in lost]
    if not pieces:
        gone += [row for row in claims if not _is_of_a_piece(row, visit)]
    added = _that_cost(visit, found.added, claims)
    return BillDifference(visit, added, tuple(row for row in gone if _is_to_credit(row)))


def price_difference(difference: BillDifference) -> PricedWork | None:
    """The added work at the prices of its day; None where a price is missing."""
    visit = difference.visit
    try:
        return priced_work(visit.farm, [visit], claims_on(visit.scope, [visit]))
    except NoPrice:
        return None


def _that_cost(
    visit: Visit, added: tuple[WorkPiece, ...], claims: Sequence[BilledWork]
) -> tuple[WorkPiece, ...]:
    """Without pieces that have no price of their own or are under guarantee; all of them where a price is missing."""
    if not added:
        return ()
    try:
        lines = priced_work(visit.farm, [visit], claims).lines
    except NoPrice:
        return added
    costs = {key for line in lines if line.unit_price for key in line.keys}
    return tuple(piece for piece in added if piece.key in costs)


def _is_of_a_piece(row: BilledWork, visit: Visit) -> bool:
    """The supplements, travel and the minimum are no pieces: only the call-out is counted among them."""
    return not row.key.startswith("visit/") or row.key == visit_key(visit.uid, PriceItem.CALL_OUT)


def _is_to_credit(row: BilledWork) -> bool:
    """On a draft it is mended by drafting anew; with a credit line it is being credited; unbilled it costs nothing."""
    return (
        row.line_id is not None
        and row.credit_line_id is None
        and row.invoice is not None
        and row.invoice.is_issued
    )
