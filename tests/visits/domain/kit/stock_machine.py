"""Buying, moving, counting, throwing away, and two phones that send uses late and out of order, as it comes."""

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from tests.visits.domain.kit.stock_world import PlainLedger, StockWorld

PLACES = st.integers(0, 2)
PHONES = st.integers(0, 1)
BACK = st.sampled_from([0, 0, 0, 5, 30, 90])
AMOUNTS = st.integers(1, 25)
PICKS = st.one_of(st.none(), st.integers(0, 5))
PENCE = st.one_of(st.none(), *[st.integers(0, 2999)] * 4)
SHELVES = st.sampled_from([None, 10, 100, 300])


class StockMachine(RuleBasedStateMachine):
    """Whatever is done in whatever order, ledger and tokens agree."""

    def __init__(self):
        super().__init__()
        self.world = StockWorld(self.new_ledger())

    def new_ledger(self):
        return PlainLedger()

    @initialize(lots=st.lists(st.tuples(PLACES, AMOUNTS, PENCE, SHELVES), min_size=2, max_size=4))
    def begin_with_some_lots(self, lots):
        for place, tokens, pence, shelf in lots:
            self.world.buy(place, tokens, pence, shelf, 90)

    @rule(minutes=st.sampled_from([1, 5, 40]))
    def time_goes_by(self, minutes):
        self.world.wait(minutes)

    @rule(place=PLACES, tokens=AMOUNTS, pence=PENCE, shelf=SHELVES, back=BACK)
    def buy(self, place, tokens, pence, shelf, back):
        self.world.buy(place, tokens, pence, shelf, back)

    @rule(source=PLACES, step=st.integers(1, 2), tokens=AMOUNTS, pick=PICKS, back=BACK)
    def move(self, source, step, tokens, pick, back):
        self.world.move(source, (source + step) % 3, tokens, pick, back)

    @rule(place=PLACES, tokens=AMOUNTS, pick=PICKS, back=BACK)
    def write_off(self, place, tokens, pick, back):
        self.world.write_off(place, tokens, pick, back)

    @rule(place=PLACES, tokens=st.integers(0, 25), back=BACK)
    def count(self, place, tokens, back):
        self.world.count(place, tokens, back)

    @rule(
        phone=PHONES,
        place=PLACES,
        tokens=st.sampled_from([-3, 1, 2, 4, 9, 20]),
        back=BACK,
        is_sent=st.booleans(),
    )
    def use(self, phone, place, tokens, back, is_sent):
        self.world.jot(phone, place, tokens, back)
        if is_sent:
            self.world.deliver(phone, False, 3)

    @rule(
        phone=PHONES,
        pick=st.integers(0, 9),
        tokens=st.sampled_from([-2, 0, 1, 7, 30]),
        is_elsewhere=st.booleans(),
        is_sent=st.booleans(),
    )
    def mend_a_use(self, phone, pick, tokens, is_elsewhere, is_sent):
        self.world.mend(phone, pick, tokens, is_elsewhere)
        if is_sent:
            self.world.deliver(phone, False, 9)

    @rule(phone=PHONES, is_backwards=st.booleans(), share=st.integers(1, 9))
    def send(self, phone, is_backwards, share):
        self.world.deliver(phone, is_backwards, share)

    @invariant()
    def ledger_and_tokens_agree(self):
        self.world.check()

    def teardown(self):
        for phone in (1, 0):
            self.world.deliver(phone, True, 1000)
        self.world.check()
        self.world.check_cuts()
