"""A blade's state is brought to what has been said of it."""

from django.db import transaction

from visits.models import Blade
from visits.selectors.kit.blade_standing import standing_of


@transaction.atomic
def settle_blade(*, blade: Blade) -> Blade:
    """The blade, locked, with state, since when and fault as its events, its sharpenings and the words at the crush
    say, whatever order they came in. Whoever wrote or took back one of them calls it in the same transaction.
    """
    row = blade.locked()
    standing = standing_of(row)
    row.state, row.state_since = standing.state.value, standing.since
    row.fault = standing.fault.value if standing.fault else ""
    row.save(update_fields=["state", "state_since", "fault"])
    return row
