import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.visit_length import FarmSetup, LengthFigures, expected_length
from visits.domain.visit_lengths.finished_visit import Work
from visits.domain.visit_lengths.length_parts import DEVIATIONS, PARTS, Vans, amounts, columns_of, prior_of

setups = st.builds(
    FarmSetup,
    st.booleans(),
    st.booleans(),
    st.booleans(),
    st.booleans(),
    st.booleans(),
    st.integers(0, 3),
)


@given(setup=setups, functional=st.integers(0, 60), corrective=st.integers(0, 20))
def test_the_parts_at_the_planning_figures_are_the_planning_rule(setup, functional, corrective):
    """Without blocks and cows only looked at, which that rule does not know."""
    figures = LengthFigures()
    columns = columns_of(setup, Work(functional, corrective, 0, 0), Vans(()), None)
    means = prior_of(figures, Vans(())).means
    counts = {"head_count": functional + corrective, "corrective_count": corrective}
    assert (
        sum(means[at] * amount for at, amount in columns) == expected_length(figures, setup, **counts).minutes
    )


def test_a_van_has_a_column_of_its_own_times_the_cows():
    vans = Vans((7, 9))
    assert columns_of(FarmSetup(), Work(4, 1, 0, 0), vans, 9)[-1] == (len(PARTS) + 1, 5)
    assert len(columns_of(FarmSetup(), Work(4, 1, 0, 0), vans, 8)) == len(
        amounts(FarmSetup(), Work(4, 1, 0, 0))
    )


def test_the_prior_is_the_business_own_figures_with_every_deviation_above_nothing():
    prior = prior_of(LengthFigures(functional_cow=8.5), Vans((3,)))
    assert prior.means[PARTS.index("functional_cow")] == 8.5
    assert prior.means[-1] == 0
    assert len(prior.means) == len(prior.precisions) == len(PARTS) + 1
    assert prior.precisions[0] == pytest.approx(1 / DEVIATIONS[0] ** 2)
    assert len(DEVIATIONS) == len(PARTS)


@pytest.mark.parametrize(
    ("level", "part"), [(0, "wash_down"), (2, "wash_down_dermatitis"), (3, "wash_down_restricted")]
)
def test_the_wash_is_by_hygiene_level(level, part):
    assert part in amounts(FarmSetup(hygiene_level=level), Work(1, 0, 0, 0))
