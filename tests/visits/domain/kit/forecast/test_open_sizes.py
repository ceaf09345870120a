from decimal import Decimal

import numpy as np
import pytest

from tests.visits.domain.kit.forecast.made_models import ROUTINE, booked, model
from visits.domain.kit.forecast.amounts import Amounts
from visits.domain.kit.forecast.open_sizes import WORTH, open_sizes
from visits.domain.kit.forecast.past_work import Usual

USUAL = {ROUTINE: Usual(4, 0)}


def test_what_was_seen_and_what_the_rates_say_are_mixed_by_how_much_was_seen():
    told = model()
    cells = open_sizes(told, {ROUTINE: Amounts([(Decimal(9), WORTH)])}, USUAL)[ROUTINE]
    wanted = np.zeros(10)
    wanted[:5] = told.made_cells(booked(4, farm=-1)) / 2
    wanted[9] = 0.5
    assert cells == pytest.approx(wanted)


def test_with_a_new_consumable_the_rates_speak_of_a_usual_visit():
    told = model()
    cells = open_sizes(told, {ROUTINE: Amounts()}, USUAL)[ROUTINE]
    assert cells.tolist() == told.made_cells(booked(4, farm=-1)).tolist()
    assert open_sizes(told, {}, {}) == {}
