"""The signature of readable code bases holds (architecture.md section 4); run with -s to see the numbers."""

import ast

import pytest

from tests.architecture.signature import Signature, lines_of, measure


@pytest.fixture(scope="module")
def measured() -> Signature:
    found = measure()
    print(f"\n{found}")
    return found


def test_the_product_keeps_the_signature(measured):
    assert not measured.faults(), "\n".join([str(measured), *measured.faults()])


def test_a_function_counts_from_its_name_to_its_last_line():
    function = ast.parse("@mark\ndef f():\n    a = 1\n    return a\n").body[0]
    assert lines_of(function) == 3


def test_faults_name_the_place():
    measured = Signature(1, 20, (20, "a.py"), 1, 0.0, ["60 lines: a.py:1 f"], ["a.py:1 f"], ["a.py:1 f"])
    assert len(measured.faults()) == 3
