"""The command on files: what it prints, where it writes and how it exits."""

import json
from pathlib import Path

import pytest
from django.core.management import call_command

FIXTURES = Path(__file__).parents[4] / "fixtures" / "week_problems"


def test_the_plan_of_a_good_problem_is_printed(capsys):
    call_command("solve_week", str(FIXTURES / "three_farms.json"), "--iterations", "20")
    printed = capsys.readouterr()
    assert json.loads(printed.out)["format"] == "trimops-week-plan/1"
    assert printed.err == ""


def test_the_plan_is_written_where_asked_and_nothing_is_printed(tmp_path, capsys):
    out = tmp_path / "plan.json"
    call_command("solve_week", str(FIXTURES / "three_farms.json"), "--out", str(out), "--seed", "7")
    assert json.loads(out.read_text())["seed"] == 7
    assert capsys.readouterr().out == ""


def exit_of(*words):
    with pytest.raises(SystemExit) as left:
        call_command("solve_week", *map(str, words))
    return left.value.code


def test_a_malformed_problem_exits_2_with_a_line_per_fault_and_writes_nothing(tmp_path, capsys):
    out = tmp_path / "plan.json"
    assert exit_of(FIXTURES / "malformed.json", "--out", out) == 2
    assert not out.exists()
    lines = capsys.readouterr().err.splitlines()
    assert "jobs[0].windows[0].end: is before its start" in lines
    assert "jobs[1].cows: is not a whole number" in lines


@pytest.mark.parametrize("content", [None, b"\xff\xfe", b"{"])
def test_a_file_that_cannot_be_read_exits_2(tmp_path, content, capsys):
    path = tmp_path / "problem.json"
    if content is not None:
        path.write_bytes(content)
    assert exit_of(path) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


@pytest.mark.parametrize(
    "words", [("--seconds", "0"), ("--seconds", "nan"), ("--seed", "-1"), ("--iterations", "0")]
)
def test_limits_that_make_no_sense_exit_2(words, capsys):
    assert exit_of(FIXTURES / "three_farms.json", *words) == 2
    assert capsys.readouterr().err.startswith(words[0])
