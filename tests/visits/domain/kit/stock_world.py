"""Random dealings with stock: what is done is told to a ledger and, as facts, to the token model; both must agree.

`PlainLedger` keeps lines as the services write them; tests/visits/services/kit/ has one on the real services.
"""

import pickle
from collections import Counter, defaultdict
from datetime import UTC, datetime, timedelta
from decimal import Decimal
from uuid import uuid4

from tests.visits.domain.kit.stock_tokens import TOKEN, Fact, TokenStore
from visits.domain.kit.count_gaps import count_gaps
from visits.domain.kit.stock_fold import StockFold
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.kit.stock_ledger import reckon_stock
from visits.domain.kit.stock_lines import Lot, Movement

START = datetime(2026, 3, 2, 8, tzinfo=UTC)
STORE, VAN, OTHER_VAN = 1, 2, 3
PLACES = (STORE, VAN, OTHER_VAN)


class PlainLedger:
    """Lines in a list. Each act gives the id of its first line."""

    places = PLACES

    def __init__(self):
        self.lines, self.lots, self.counts = [], [], defaultdict(dict)

    def buy(self, place, quantity, cost, expires_on, at):
        self.lots.append(Lot(len(self.lots) + 1, expires_on, at.date()))
        first = self._add(at, place, MovementKind.BOUGHT, quantity, self.lots[-1].id, cost)
        self._settle([place], at)
        return first, self.lots[-1].id

    def move(self, source, target, quantity, lot, at):
        name = str(uuid4())
        first = self._add(at, source, MovementKind.MOVED, -quantity, lot, source=name)
        self._add(at, target, MovementKind.MOVED, quantity, lot, source=name)
        self._settle([source, target], at)
        return first

    def write_off(self, place, quantity, lot, at):
        first = self._add(at, place, MovementKind.WRITTEN_OFF, -quantity, lot)
        self._settle([place], at)
        return first

    def count(self, place, quantity, at):
        self.counts[place][at] = quantity
        self._settle([place], at)

    def use(self, source, wanted):
        """`wanted`: (place, at) -> quantity, all that the source says now. The ids of the lines by (place, at)."""
        told = defaultdict(Decimal)
        for line in self.lines:
            if line.source == source:
                told[line.place, line.at] -= line.quantity
        ids = {}
        for place, at in sorted({*wanted, *told}):
            missing = told[place, at] - wanted.get((place, at), Decimal(0))
            if missing:
                ids[place, at] = self._add(at, place, MovementKind.USED, missing, source=source)
        for place, at in ids:
            self._settle([place], at)
        return ids

    def source(self, number):
        return f"trim {number}"

    def movements(self):
        return list(self.lines)

    def _add(self, at, place, kind, quantity, lot=None, cost=None, source=""):
        self.lines.append(Movement(len(self.lines) + 1, at, place, kind, quantity, lot, cost, source))
        return len(self.lines)

    def _settle(self, places, since):
        for place in places:
            counts = [(at, said) for at, said in sorted(self.counts[place].items()) if at >= since]
            gaps = count_gaps((said, balance_at(self.lines, place, at)) for at, said in counts)
            for (at, _), gap in zip(counts, gaps, strict=True):
                if gap:
                    self._add(at, place, MovementKind.COUNTED, gap)


class StockWorld:
    """What people and phones do. Amounts are tokens; `counts` says how often each was done, over all worlds."""

    done: Counter = Counter()

    def __init__(self, ledger):
        self.ledger, self.now = ledger, START
        self.facts, self.uses, self.born = [], {}, {}
        self.sources = []
        self.outboxes = ([], [])

    def wait(self, minutes):
        self.now += timedelta(minutes=minutes)

    def buy(self, place, tokens, pence, shelf, back):
        at = self.now - timedelta(minutes=back)
        expires_on = None if shelf is None else at.date() + timedelta(days=shelf)
        cost = None if pence is None else Decimal(pence) / 100
        place = self.ledger.places[place]
        first, lot = self.ledger.buy(place, tokens * TOKEN, cost, expires_on, at)
        self._note(Fact(at, first, "bought", place, tokens, lot=lot, pence=pence), back)

    def move(self, source, target, tokens, pick, back):
        at, lot = self.now - timedelta(minutes=back), self._lot(pick)
        source, target = self.ledger.places[source], self.ledger.places[target]
        first = self.ledger.move(source, target, tokens * TOKEN, lot, at)
        self._note(Fact(at, first, "moved", source, tokens, target, lot), back)

    def write_off(self, place, tokens, pick, back):
        at, lot, place = self.now - timedelta(minutes=back), self._lot(pick), self.ledger.places[place]
        first = self.ledger.write_off(place, tokens * TOKEN, lot, at)
        self._note(Fact(at, first, "written_off", place, tokens, lot=lot), back)

    def count(self, place, tokens, back):
        at, place = self.now - timedelta(minutes=back), self.ledger.places[place]
        self.ledger.count(place, tokens * TOKEN, at)
        # Of two counts at one moment the later word stands.
        same = [fact for fact in self.facts if (fact.what, fact.place, fact.at) == ("counted", place, at)]
        for fact in same:
            self.facts.remove(fact)
        self._note(Fact(at, 0, "counted", place, tokens), back)

    def jot(self, phone, place, tokens, back):
        """A phone notes a use and keeps it for now. Below nought: less was used than cows say, by hand."""
        at = self.now - timedelta(minutes=back)
        self.sources.append([at, self.ledger.places[place], 1])
        self.outboxes[phone].append((len(self.sources) - 1, 1, at, self.ledger.places[place], tokens))

    def mend(self, phone, pick, tokens, is_elsewhere):
        """A later word of a use (0 tokens: taken back); it may say another van and moment."""
        if not self.sources:
            return
        number = pick % len(self.sources)
        source = self.sources[number]
        if is_elsewhere:
            source[0], source[1] = source[0] + timedelta(minutes=3), self.ledger.places[1]
        source[2] += 1
        self.outboxes[phone].append((number, source[2], source[0], source[1], tokens))

    def deliver(self, phone, is_backwards, share):
        """A phone sends some of what it kept, in any order; the latest word shows, whatever came first."""
        box = self.outboxes[phone]
        sent = box[:share]
        del box[:share]
        for number, version, at, place, tokens in reversed(sent) if is_backwards else sent:
            self.done["uses that came late"] += at < self.now
            if version > self.uses.get(number, (0,))[0]:
                self.uses[number] = (version, at, place, tokens)
                wanted = {(place, at): tokens * TOKEN} if tokens else {}
                for where, line in self.ledger.use(self.ledger.source(number), wanted).items():
                    self.born.setdefault((number, *where), line)
            self.done["uses sent"] += 1

    def check(self):
        """The ledger, reckoned, is where the tokens are; every count is true; the penny is where it belongs."""
        lines = self.ledger.movements()
        model = self.model()
        check_counts(lines, self.facts)
        check_reckoned(reckon_stock(lines, self.ledger.lots), model, lines)
        return model

    def check_cuts(self):
        """Put away at any moment and gone on with, it ends where the whole ends."""
        lines, lots = self.ledger.movements(), self.ledger.lots
        whole = StockFold()
        whole.add(lines, lots)
        for cut in {line.at for line in lines}:
            fold = StockFold()
            fold.add([line for line in lines if line.at < cut], lots)
            fold = pickle.loads(pickle.dumps(fold))
            fold.add([line for line in lines if line.at >= cut], lots)
            assert fold.standing() == whole.standing()

    def model(self):
        facts = list(self.facts)
        for number, (_, at, place, tokens) in self.uses.items():
            if tokens:
                turn = self.born[number, place, at]
                facts.append(Fact(at, turn, "used", place, tokens, source=self.ledger.source(number)))
        return TokenStore({lot.id: (lot.expires_on, lot.bought_on) for lot in self.ledger.lots}).run(facts)

    def _note(self, fact, back):
        self.facts.append(fact)
        self.done[fact.what] += 1
        self.done["dated back"] += back > 0

    def _lot(self, pick):
        lots = self.ledger.lots
        return lots[pick % len(lots)].id if pick is not None and lots else None


def balance_at(lines, place, at):
    return sum((line.quantity for line in lines if line.place == place and line.at <= at), Decimal(0))


def check_counts(lines, facts):
    for fact in facts:
        if fact.what == "counted":
            assert balance_at(lines, fact.place, fact.at) == fact.tokens * TOKEN, "a count is no longer true"


def check_reckoned(reckoned, model, lines):
    places = {line.place for line in lines}
    for place in places:
        total = sum((line.quantity for line in lines if line.place == place), Decimal(0))
        assert reckoned.balances[place] == total == model.balance(place) * TOKEN
        left = [(lot.lot, lot.quantity) for lot in reckoned.lots_left[place]]
        assert left == [(lot, count * TOKEN) for lot, count in model.lots_at(place)]
        assert all(quantity > 0 for _, quantity in left), "a lot below nought"
        assert total >= 0 or any(short.place == place for short in reckoned.shortfalls), "short and not said"
    short = [(each.place, each.at, each.quantity) for each in reckoned.shortfalls]
    assert short == [(place, at, tokens * TOKEN) for place, at, tokens in model.short]
    doubted = [(each.place, each.at, each.quantity, each.lot) for each in reckoned.lots_in_doubt]
    assert doubted == [(place, at, tokens * TOKEN, lot) for place, at, tokens, lot in model.doubted]
    check_money(reckoned, model)


def check_money(reckoned, model):
    assert reckoned.paid * 100 == model.paid
    assert reckoned.value.cost * 100 == model.left_pence()
    assert reckoned.value.quantity == sum(reckoned.balances.values(), Decimal(0))
    spent = {**reckoned.uses, "lost": reckoned.lost, "written off": reckoned.written_off}
    assert {name: cost.cost * 100 for name, cost in spent.items() if cost.cost} == {
        name: pence for name, pence in model.pence.items() if pence
    }
    assert {name for name, cost in spent.items() if not cost.is_known} == model.unknown
    assert sum((cost.cost for cost in spent.values()), reckoned.value.cost) == reckoned.paid, (
        "a penny is lost"
    )
