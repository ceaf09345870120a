"""What entries of the trail held is erased with the farm or the person it was about; that they were written stays."""

from collections.abc import Iterable
from datetime import datetime

from django.db import transaction

from trimops.audit.selectors.entries_below import AT_ONCE, entries_about, rows_below
from trimops.kernel.scope import Scope


@transaction.atomic
def blot_audit(*, scope: Scope, roots: Iterable[str], at: datetime) -> int:
    """Empty before, after and where from of every entry about the rows `roots` ("farms.farm:3") and about all that ever
    hung on them; how many.

    The hashes stay, so the chain still proves who, when and to which row. It cannot be taken back. Whoever erases calls
    it last: what the erasing itself took away is an entry, too.
    """
    empty = {"before": "", "after": "", "salt": "", "seen_from": "", "session": ""}
    rows = rows_below(scope, roots)
    parts = [rows[start : start + AT_ONCE] for start in range(0, len(rows), AT_ONCE)]
    return sum(
        entries_about(scope, part).filter(blotted_at=None).update(**empty, blotted_at=at) for part in parts
    )
