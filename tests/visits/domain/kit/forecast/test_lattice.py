from decimal import Decimal

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.kit.forecast.amounts import Amounts
from visits.domain.kit.forecast.lattice import common_step, laid_on


def amounts(**weights):
    return Amounts(
        (Decimal(key.strip("_").replace("p", ".").replace("m", "-")), w) for key, w in weights.items()
    )


@pytest.mark.parametrize(
    ("seen", "step"),
    [
        (amounts(_40=929.0, _80=8.0), "40"),
        (amounts(_1=462.0, _2=1.0), "1"),
        (amounts(_0p5=18884.0), "0.5"),
        (amounts(_0p02=9.0), "0.02"),
        (amounts(_40=50.0, _60=50.0), "20"),
        # One correction in a hundred does not make the steps fine; many do.
        (amounts(_40=99.0, _37=1.0), "40"),
        (amounts(_40=60.0, _37=40.0), "1"),
        (amounts(_200=3.0, m200=1.0), "200"),
        (amounts(_0=5.0), "1"),
        (amounts(), "1"),
    ],
)
def test_the_step_is_the_common_measure_of_the_usual_amounts(seen, step):
    assert common_step(seen) == Decimal(step)


def test_a_measure_much_finer_than_what_is_used_is_made_coarser():
    step = common_step(amounts(_1000=6.0, _999p99=5.0, _500=4.0))
    assert step == 20
    assert step % Decimal("0.01") == 0


@given(
    st.dictionaries(
        st.decimals(-300, 300, places=2), st.floats(0.1, 9, allow_nan=False), min_size=1, max_size=8
    ),
    st.sampled_from(["0.02", "1", "40"]),
)
def test_what_falls_between_two_steps_keeps_its_mean(weights, step):
    seen, step = Amounts(weights.items()), Decimal(step)
    cells = laid_on(seen, step)
    assert cells.chances.sum() == pytest.approx(1)
    assert (cells.chances >= 0).all()
    mean = float(cells.chances @ (cells.first + np.arange(len(cells.chances)))) * float(step)
    assert mean == pytest.approx(sum(float(a) * w for a, w in weights.items()) / seen.weight, abs=1e-6)


def test_amounts_on_the_steps_stay_as_they_are():
    cells = laid_on(amounts(m40=1.0, _40=1.0, _80=2.0), Decimal(40))
    assert cells.first == -1
    assert cells.chances.tolist() == [0.25, 0, 0.25, 0.5]


def test_no_amounts_cannot_be_laid_out():
    with pytest.raises(ValueError, match="no amounts"):
        laid_on(Amounts(), Decimal(1))
