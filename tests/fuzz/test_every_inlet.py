"""Spoilt files of every kind: a right result or a clear no. Ten thousand of them: tests/bench/fuzz."""

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.fuzz.inlets import INLETS
from tests.fuzz.mangle import mangled
from tests.fuzz.tried import tried
from tests.random_examples import examples

EACH = pytest.mark.parametrize("name", INLETS)
TURNS = 60


@EACH
def test_the_real_files_are_read(name):
    inlet = INLETS[name]
    results = [tried(inlet, real) for real in inlet.real()]
    assert any(one.is_read for one in results), "else the spoilt ones try nothing"


@EACH
def test_a_spoilt_file_is_read_or_refused_by_name(name):
    inlet, dice = INLETS[name], Random(name)
    reals = inlet.real()
    for _ in range(TURNS):
        tried(inlet, mangled(dice.choice(reals), reals, dice))


@EACH
def test_whatever_bytes_come_they_are_read_or_refused_by_name(name):
    @settings(max_examples=examples(90), deadline=None)
    @given(st.one_of(st.binary(max_size=300), st.text(max_size=120).map(str.encode)))
    def try_it(content):
        tried(INLETS[name], content)

    try_it()


@EACH
def test_a_file_of_another_kind_is_read_or_refused_by_name(name):
    for other in INLETS.values():
        for real in other.real()[:3]:
            tried(INLETS[name], real)
