"""What is read: see asked_all.py."""

import pytest

from tests.standards.api.asked_all import EXAMPLES, note, operations


@pytest.mark.parametrize("name", [name for name, each in operations().items() if each.method == "get"])
def test_it_answers_as_described(name, asking, db):
    told = asking.ask(name, EXAMPLES)
    note(name, told)
    assert not told.faults, told.words()
