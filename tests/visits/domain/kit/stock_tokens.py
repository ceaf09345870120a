"""The stock as single tokens that are carried about by hand: a model of the ledger that shares no code with it.

It is told facts, never lines: that a count found so much, not what the ledger lacked; what a cow used at last, not how
it was corrected on the way.
"""

from collections import defaultdict
from dataclasses import dataclass, field
from datetime import date, datetime
from decimal import Decimal
from fractions import Fraction
from math import floor

TOKEN = Decimal("0.25")
"""So much of the unit is one token, so that two decimals are used."""


@dataclass
class Fact:
    """`tokens`: how many were bought, moved, used, written off; of a count how many lay there."""

    at: datetime
    id: int
    what: str
    place: int
    tokens: int
    target: int | None = None
    lot: int | None = None
    pence: int | None = None
    source: str = ""

    def turn(self):
        return (self.at, 1 if self.what == "counted" else 0, self.id)


@dataclass
class TokenStore:
    """What the facts come to. `lots`: lot -> (expires_on or None, bought_on)."""

    lots: dict[int, tuple[date | None, date]]
    here: dict[int, list] = field(default_factory=lambda: defaultdict(list))
    owed: dict[int, int] = field(default_factory=lambda: defaultdict(int))
    taken: dict[int, list] = field(default_factory=lambda: defaultdict(list))
    short: list = field(default_factory=list)
    doubted: list = field(default_factory=list)
    gone: int = 0
    pence: dict[str, int] = field(default_factory=lambda: defaultdict(int))
    unknown: set[str] = field(default_factory=set)

    def run(self, facts):
        facts = sorted(facts, key=Fact.turn)
        self._line_up([fact for fact in facts if fact.what == "bought"])
        for fact in facts:
            getattr(self, f"_{fact.what}")(fact)
        return self

    def balance(self, place):
        return len(self.here[place]) - self.owed[place]

    def lots_at(self, place):
        found = []
        for lot in sorted(self.here[place], key=self._age):
            if found and found[-1][0] == lot:
                found[-1][1] += 1
            else:
                found.append([lot, 1])
        return [(lot, count) for lot, count in found]

    def left_pence(self):
        return self.paid - self._sum_of_first(self.gone)

    # What happens

    def _bought(self, fact):
        for _ in range(fact.tokens):
            self._put(fact.place, fact.lot)

    def _moved(self, fact):
        for lot in self._take(fact, fact.tokens):
            self._put(fact.target, lot)

    def _written_off(self, fact):
        self._take(fact, fact.tokens)
        self._leave(fact.tokens, "written off")

    def _used(self, fact):
        self._use(fact, fact.tokens, fact.source)

    def _counted(self, fact):
        self._use(fact, self.balance(fact.place) - fact.tokens, "lost")

    def _use(self, fact, tokens, name):
        self._leave(tokens, name)
        if tokens > 0:
            shorts_before = len(self.short)
            taken = self._take(fact, tokens)
            missing = self.short[-1][2] if len(self.short) > shorts_before else 0
            self.taken[fact.place] += taken[: len(taken) - missing]
        for _ in range(-tokens):
            self._come_back(fact.place)

    # Tokens

    def _age(self, lot):
        if lot is None:
            return (1, date.max, date.max, 0)
        expires, bought = self.lots[lot]
        return (0, expires or date.max, bought, lot)

    def _take(self, fact, tokens):
        found, others = [], 0
        for _ in range(tokens):
            lots = self.here[fact.place]
            if not lots:
                break
            best = min(lots, key=lambda lot: (lot != fact.lot if fact.lot else 0, self._age(lot)))
            lots.remove(best)
            found.append(best)
            others += bool(fact.lot) and best != fact.lot
        missing = tokens - len(found)
        self.owed[fact.place] += missing
        if others:
            self.doubted.append((fact.place, fact.at, others, fact.lot))
        if missing:
            self.short.append((fact.place, fact.at, missing))
        return found + [fact.lot] * missing

    def _put(self, place, lot):
        if self.owed[place]:
            self.owed[place] -= 1
            self.taken[place].append(lot)
        else:
            self.here[place].append(lot)

    def _come_back(self, place):
        if self.owed[place]:
            self.owed[place] -= 1
        else:
            self.here[place].append(self.taken[place].pop() if self.taken[place] else None)

    # Money

    def _line_up(self, bought):
        self.row = []
        for fact in sorted(bought, key=Fact.turn):
            each = None if fact.pence is None else Fraction(fact.pence, fact.tokens)
            self.row += [each] * fact.tokens
        self.paid = sum(fact.pence or 0 for fact in bought)
        self.sums = [Fraction(0)]
        for price in self.row:
            self.sums.append(self.sums[-1] + (price or 0))

    def _sum_of_first(self, tokens):
        exact = self.sums[min(max(tokens, 0), len(self.row))]
        return floor(exact + Fraction(1, 2))

    def _leave(self, tokens, name):
        before, self.gone = self.gone, self.gone + tokens
        self.pence[name] += self._sum_of_first(self.gone) - self._sum_of_first(before)
        passed = range(min(before, self.gone), max(before, self.gone))
        if any(n < 0 or n >= len(self.row) or self.row[n] is None for n in passed):
            self.unknown.add(name)
