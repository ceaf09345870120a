"""What is left of each lot, as the van's load is reckoned with it."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from trimops.kernel.scope import Scope
from visits.domain.kit.van_load import Portion
from visits.selectors.kit.lots_left import all_lots_left


def lot_portions(scope: Scope) -> Mapping[tuple[int, int], Sequence[Portion]]:
    """(consumable, place) -> lots with something left, in the order of use. At most five queries."""
    found: defaultdict[tuple[int, int], list[Portion]] = defaultdict(list)
    for item, lots in all_lots_left(scope).items():
        for each in lots:
            if each.quantity > 0:
                lot = each.lot
                portion = Portion(
                    lot.pk if lot else None,
                    lot.code if lot else "",
                    lot.expires_on if lot else None,
                    each.quantity,
                )
                found[item, each.place].append(portion)
    return found
