"""The stock ledger of one consumable, reckoned: what lies where, of which lots, and what was used at what cost."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from visits.domain.kit.hundredths import from_hundredths
from visits.domain.kit.pack_costs import Pack, PackCosts
from visits.domain.kit.stock_events import StockEvent
from visits.domain.kit.stock_fold import LEAVING, StockFold
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_lines import Cost, Lot, Movement, Reckoned


@dataclass(frozen=True, slots=True)
class CostedEvent:
    """A use, a write-off or what a count found: `quantity` that left (below nought: came back) and what it cost."""

    event: StockEvent
    cost: Cost


def reckon_stock(movements: Iterable[Movement], lots: Iterable[Lot]) -> Reckoned:
    """What all lines of one consumable come to, in the order of (at, id) as `stock_events` has it. Any order in.

    Each place uses its lots by their dates; costs go first in, first out over all places (`PackCosts`). ValueError for
    quantities or costs with more than two places.
    """
    fold = StockFold()
    events = fold.add(movements, lots)
    costed = cost_events(events, fold.packs())
    standing = fold.standing()
    return Reckoned(
        balances=standing.balances,
        lots_left=standing.lots_left,
        paid=standing.paid,
        value=standing.value,
        shortfalls=standing.shortfalls,
        lots_in_doubt=standing.lots_in_doubt,
        uses=_by_source(costed),
        written_off=_sum(costed, MovementKind.WRITTEN_OFF),
        lost=_sum(costed, MovementKind.COUNTED),
    )


def packs_bought(events: Iterable[StockEvent]) -> PackCosts:
    """What was bought, in its order, by its cost."""
    bought = (event for event in events if event.kind is MovementKind.BOUGHT)
    return PackCosts(Pack(event.change, event.cost) for event in bought)


def cost_events(events: Iterable[StockEvent], packs: PackCosts, gone: int = 0) -> list[CostedEvent]:
    """What each event that takes stock away, or finds some, cost. `gone`: units that had left before, in hundredths."""
    costed = []
    for event in events:
        if event.kind in LEAVING:
            after = gone - event.change
            cost = from_hundredths(packs.between(gone, after))
            known = packs.are_known(gone, after)
            costed.append(CostedEvent(event, Cost(from_hundredths(-event.change), cost, known)))
            gone = after
    return costed


def _by_source(costed: Sequence[CostedEvent]) -> dict[str, Cost]:
    found: defaultdict[str, Cost] = defaultdict(Cost)
    for each in costed:
        if each.event.kind is MovementKind.USED:
            found[each.event.source] += each.cost
    return dict(found)


def _sum(costed: Sequence[CostedEvent], kind: MovementKind) -> Cost:
    return sum((each.cost for each in costed if each.event.kind is kind), Cost())
