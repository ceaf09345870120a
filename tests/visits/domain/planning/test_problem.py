import dataclasses

import pytest

from visits.domain.planning.problem import Span


def test_a_problem_cannot_be_changed_while_it_is_searched():
    with pytest.raises(dataclasses.FrozenInstanceError):
        Span(1, 2).start = 5
