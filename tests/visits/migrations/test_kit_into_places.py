"""What stood in the older tables of the kit stands in the newer ones afterwards, and comes back."""

import json
import os
import subprocess
import sys

import pytest

from tests.architecture.source_tree import ROOT


@pytest.fixture(scope="module")
def walked(tmp_path_factory):
    """In a process and a database of its own: the tests' database never moves."""
    folder = tmp_path_factory.mktemp("moving")
    env = {name: value for name, value in os.environ.items() if name != "DATABASE_URL"}
    command = [sys.executable, "-m", "tests.visits.migrations.move_kit"]
    done = subprocess.run(
        command, cwd=ROOT, env={**env, "TRIMOPS_DATA_DIR": str(folder)}, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout.splitlines()[-1])


def test_stock_lies_in_places_and_what_was_bought_is_a_lot(walked):
    van = "Store (van)"
    assert walked["there"]["stock"] == [
        ["Store", "bought", "40.00", "", True],
        [van, "bought", "10.00", "", True],
        [van, "used", "-3.00", "by_hand", False],
        [van, "counted", "-2.00", "", False],
        [van, "used", "-120.00", "by_hand", False],
    ]


def test_a_difference_becomes_a_count_of_what_lay_there(walked):
    assert walked["there"]["counted"] == [["Store (van)", "5.00"]]


def test_uses_become_recipes(walked):
    assert walked["there"]["recipes"] == [
        ["Wood", "block", "wood", "1.00"],
        ["Glue", "block", "", "40.00"],
        ["Wrap", "wrap", "", "1.00"],
    ]


def test_knives_become_blades_with_their_sharpenings(walked):
    assert walked["there"]["blades"] == [
        ["Old", "retired", "2025-06-01"],
        ["Blue", "in_use", "2025-01-01"],
    ]
    assert walked["there"]["edges"] == [["Blue", 20]]


def test_the_way_back_says_what_it_can(walked):
    back = walked["back"]
    assert [row[1:] for row in back["stock"]][0] == ["bought", "40.00"]
    assert back["items"] == [["Wood", "wood", "0.00"], ["Glue", "", "40.00"], ["Wrap", "", "0.00"]]
    assert back["knives"] == [["Old", "2025-06-01"], ["Blue", "None"]]
