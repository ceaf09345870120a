"""What the lines of a ledger come to."""

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_ledger import reckon_stock
from visits.domain.kit.stock_lines import Cost, Lot, LotLeft, Movement, Shortfall

TEN = datetime(2026, 3, 3, 10, tzinfo=UTC)
STORE, VAN = 1, 2
OLD, NEW = Lot(1, date(2026, 9, 1), date(2026, 1, 5)), Lot(2, date(2027, 3, 1), date(2026, 2, 1))


def at(minutes):
    return TEN + timedelta(minutes=minutes)


class Lines(list):
    """Lines in the order in which they were written."""

    def add(self, minutes, place, kind, quantity, **words):
        self.append(Movement(len(self) + 1, at(minutes), place, kind, Decimal(quantity), **words))

    def buy(self, minutes, quantity, lot, cost, place=STORE):
        self.add(minutes, place, MovementKind.BOUGHT, quantity, lot=lot.id, cost=cost and Decimal(cost))

    def load(self, minutes, quantity, name="load", lot=None):
        self.add(minutes, STORE, MovementKind.MOVED, -quantity, source=name, lot=lot)
        self.add(minutes, VAN, MovementKind.MOVED, quantity, source=name, lot=lot)

    def use(self, minutes, quantity, source, place=VAN):
        self.add(minutes, place, MovementKind.USED, -quantity, source=source)

    def reckoned(self):
        return reckon_stock(self, [OLD, NEW])


@pytest.fixture
def lines():
    """Two deliveries of glue; half of each in the van: 400 ml at 10.00 and 400 ml at 14.00."""
    lines = Lines()
    lines.buy(0, 400, OLD, "10.00")
    lines.buy(1, 400, NEW, "14.00")
    lines.load(2, 600)
    return lines


def test_a_van_carries_the_lots_with_the_oldest_date(lines):
    found = lines.reckoned()
    assert found.balances == {STORE: 200, VAN: 600}
    assert found.lots_left == {
        STORE: (LotLeft(NEW.id, Decimal(200)),),
        VAN: (LotLeft(OLD.id, Decimal(400)), LotLeft(NEW.id, Decimal(200))),
    }


def test_uses_cost_first_in_first_out_wherever_it_lay(lines):
    lines.use(10, 100, "visit 1 wash", STORE)
    lines.use(11, 400, "visit 2 wash")
    found = lines.reckoned()
    assert found.uses == {
        "visit 1 wash": Cost(Decimal(100), Decimal("2.50")),
        "visit 2 wash": Cost(Decimal(400), Decimal("11.00")),
    }
    assert found.value == Cost(Decimal(300), Decimal("10.50"))


def test_below_nought_is_said_with_place_moment_and_amount_and_costs_the_next_bought():
    lines = Lines()
    lines.use(5, 30, "trim 1")
    found = lines.reckoned()
    assert found.balances == {VAN: -30}
    assert found.shortfalls == (Shortfall(VAN, at(5), Decimal(30)),)
    assert found.uses["trim 1"] == Cost(Decimal(30), Decimal(0), is_known=False)
    lines.buy(9, 100, OLD, "5.00", VAN)
    found = lines.reckoned()
    assert found.uses["trim 1"] == Cost(Decimal(30), Decimal("1.50"))
    assert found.shortfalls, "it was short all the same"
    assert found.value == Cost(Decimal(70), Decimal("3.50"))


def test_a_wrong_entry_that_was_mended_was_never_short(lines):
    lines.use(10, 6000, "trim 1")
    lines.add(10, VAN, MovementKind.USED, 5970, source="trim 1")
    found = lines.reckoned()
    assert found.shortfalls == ()
    assert found.uses["trim 1"] == Cost(Decimal(30), Decimal("0.75"))


def test_what_a_count_misses_is_lost_and_what_it_finds_comes_back(lines):
    lines.add(10, VAN, MovementKind.COUNTED, -100)
    assert lines.reckoned().lost == Cost(Decimal(100), Decimal("2.50"))
    lines.add(20, VAN, MovementKind.COUNTED, 40)
    found = lines.reckoned()
    assert found.lost == Cost(Decimal(60), Decimal("1.50"))
    assert found.lots_left[VAN][0] == LotLeft(OLD.id, Decimal(340))


def test_stock_counted_before_anything_was_bought_has_no_known_cost_and_goes_first():
    lines = Lines()
    lines.add(0, VAN, MovementKind.COUNTED, 50)
    lines.buy(5, 100, OLD, "10.00", VAN)
    lines.use(6, 70, "trim 1")
    found = lines.reckoned()
    assert found.uses["trim 1"] == Cost(Decimal(70), Decimal("2.00"), is_known=False)
    assert found.value == Cost(Decimal(80), Decimal("8.00"))


def test_bought_without_a_price_is_said(lines):
    lines.buy(3, 100, NEW, None, VAN)
    found = lines.reckoned()
    assert (found.paid, found.value.is_known) == (Decimal("24.00"), False)


def test_a_named_lot_is_honoured_and_the_doubt_is_said(lines):
    lines.add(10, VAN, MovementKind.WRITTEN_OFF, -250, lot=NEW.id)
    found = lines.reckoned()
    assert found.lots_left[VAN] == (LotLeft(OLD.id, Decimal(350)),)
    assert found.lots_in_doubt == (Shortfall(VAN, at(10), Decimal(50), NEW.id),)
    assert found.written_off == Cost(Decimal(250), Decimal("6.25"))
    assert found.shortfalls == ()


def test_what_was_moved_without_being_there_arrives_and_is_owed():
    lines = Lines()
    lines.load(0, 20)
    found = lines.reckoned()
    assert found.balances == {STORE: -20, VAN: 20}
    assert found.lots_left[VAN] == (LotLeft(None, Decimal(20)),)
    assert found.shortfalls == (Shortfall(STORE, at(0), Decimal(20)),)


def test_every_penny_is_somewhere(lines):
    for n in range(7):
        lines.use(10 + n, 33, f"trim {n}")
    lines.add(20, VAN, MovementKind.COUNTED, -11)
    lines.add(21, STORE, MovementKind.WRITTEN_OFF, -7)
    found = lines.reckoned()
    uses = sum((cost.cost for cost in found.uses.values()), Decimal(0))
    assert uses + found.lost.cost + found.written_off.cost + found.value.cost == found.paid == Decimal(24)


def test_nothing_at_all():
    found = reckon_stock([], [])
    assert (found.balances, found.uses, found.value) == ({}, {}, Cost())
