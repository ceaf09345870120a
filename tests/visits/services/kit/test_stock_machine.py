"""Random dealings with stock on the real services and tables: short; tests/visits/domain/kit/ has the long form."""

from decimal import Decimal

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis.stateful import run_state_machine_as_test

from tests.visits.domain.kit.stock_machine import StockMachine
from tests.visits.domain.kit.stock_tokens import TOKEN
from tests.visits.services.kit.real_ledger import RealLedger, Yard
from visits.selectors.kit.lots_left import lots_left
from visits.selectors.kit.stock_now import stock_now
from visits.selectors.kit.visit_materials import visit_materials


class RealStockMachine(StockMachine):
    """The pages' selectors say what the tokens say."""

    yard: Yard

    def new_ledger(self):
        return RealLedger(self.yard)

    def teardown(self):
        super().teardown()
        ledger, model = self.world.ledger, self.world.model()
        scope, item = ledger.house.scope, ledger.item
        (stock,) = [stock for stock in stock_now(scope) if stock.consumable == item]
        assert {at.place.pk: at.balance for at in stock.places} == {
            place: model.balance(place) * TOKEN for place in ledger.places
        }
        left = [(lot.place, lot.lot and lot.lot.pk, lot.quantity) for lot in lots_left(scope, item)]
        assert left == [
            (place, lot, tokens * TOKEN)
            for place in sorted(ledger.places)
            for lot, tokens in model.lots_at(place)
        ]
        materials = visit_materials(scope, list(ledger.visits.values()))
        for number, visit in ledger.visits.items():
            source = ledger.source(number)
            assert materials[visit.pk].cost == Decimal(model.pence[source]) / 100
            assert materials[visit.pk].is_known == (source not in model.unknown)


@pytest.mark.django_db
def test_whatever_is_done_the_services_end_where_the_tokens_lie():
    RealStockMachine.yard = Yard()
    run_state_machine_as_test(
        RealStockMachine,
        settings=settings(
            max_examples=3,
            stateful_step_count=20,
            deadline=None,
            phases=[Phase.generate],
            suppress_health_check=list(HealthCheck),
        ),
    )
