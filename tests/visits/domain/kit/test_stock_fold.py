"""The ledger gone through in parts. The random machine cuts it at every moment (`StockWorld.check_cuts`)."""

import pickle
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

from visits.domain.kit.stock_fold import StockFold
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_lines import Cost, Lot, LotLeft, Movement, Shortfall

TEN = datetime(2026, 3, 3, 10, tzinfo=UTC)
VAN = 2
LATE, SOON = Lot(1, date(2027, 3, 1), date(2026, 1, 5)), Lot(2, date(2026, 9, 1), date(2026, 2, 1))


def line(number, kind, quantity, days, **words):
    return Movement(number, TEN + timedelta(days=days), VAN, kind, Decimal(quantity), **words)


def test_what_was_put_away_goes_on_with_new_lots_and_what_was_owed():
    fold = StockFold()
    fold.add([line(1, MovementKind.USED, -10, 0, source="trim 1")], [])
    fold = pickle.loads(pickle.dumps(fold))
    bought = [
        line(2, MovementKind.BOUGHT, 30, 1, lot=LATE.id, cost=Decimal(3)),
        line(3, MovementKind.BOUGHT, 30, 1, lot=SOON.id, cost=Decimal(6)),
        line(4, MovementKind.USED, -5, 2, source="trim 2"),
    ]
    fold.add(bought, [LATE, SOON])
    found = fold.standing()
    assert found.lots_left == {VAN: (LotLeft(SOON.id, Decimal(25)), LotLeft(LATE.id, Decimal(20)))}
    assert found.balances == {VAN: 45}
    assert found.value == Cost(Decimal(45), Decimal("7.50"))
    assert found.shortfalls == (Shortfall(VAN, TEN, Decimal(10)),)


def test_nothing_stands_at_nothing():
    assert StockFold().standing().value == Cost()
