"""Half of all operations: see asked_all.py."""

import pytest

from tests.standards.api.asked_all import note
from tests.standards.api.described import EXAMPLES, part


@pytest.mark.parametrize("name", part(0))
def test_it_answers_as_described(name, asking, db):
    told = asking.ask_and_undo(name, EXAMPLES)
    note(name, told)
    assert not told.faults, told.words()
