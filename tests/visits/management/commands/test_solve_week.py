"""The command on files: what it prints, where it writes and how it exits."""

import json
from pathlib import Path

import pytest
from django.core.management import CommandError, call_command

from tests.bench.planning.made_up_weeks import made_up_week
from visits.domain.planning.stored_week import PlanBreaksRules
from visits.management.commands import solve_week

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
    "words",
    [("--seconds", "0"), ("--seconds", "nan"), ("--seed", "-1"), ("--iterations", "0"), ("--prove", "0")],
)
def test_limits_that_make_no_sense_exit_2(words, capsys):
    assert exit_of(FIXTURES / "three_farms.json", *words) == 2
    assert capsys.readouterr().err.startswith(words[0])


def test_a_file_may_begin_with_the_mark_that_some_editors_write(tmp_path, capsys):
    path = tmp_path / "problem.json"
    path.write_text((FIXTURES / "three_farms.json").read_text(), encoding="utf-8-sig")
    call_command("solve_week", str(path), "--iterations", "20")
    assert json.loads(capsys.readouterr().out)["format"] == "trimops-week-plan/1"


def test_a_fault_is_one_line_whatever_the_names_in_it(tmp_path, capsys):
    problem = json.loads((FIXTURES / "three_farms.json").read_text())
    problem["jobs"][0]["site"] = "f\n1"
    path = tmp_path / "problem.json"
    path.write_text(json.dumps(problem))
    assert exit_of(path) == 2
    assert capsys.readouterr().err.splitlines() == ['jobs[0].site: "f\\n1" is no site of this problem']


def test_a_place_that_cannot_be_written_is_told_in_a_line(tmp_path):
    out = tmp_path / "none" / "plan.json"
    with pytest.raises(CommandError, match="cannot be written"):
        call_command(
            "solve_week", str(FIXTURES / "three_farms.json"), "--iterations", "20", "--out", str(out)
        )


def test_a_plan_with_a_breach_is_never_printed(monkeypatch, tmp_path, capsys):
    def spoilt(*words, **limits):
        raise PlanBreaksRules("shifts[0].km: says 1 km, the drives add up to 2 km")

    monkeypatch.setattr(solve_week, "plan_week_problem", spoilt)
    out = tmp_path / "plan.json"
    with pytest.raises(CommandError, match="does not pass the audit") as refusal:
        call_command("solve_week", str(FIXTURES / "three_farms.json"), "--out", str(out))
    assert refusal.value.returncode == 1
    assert "shifts[0].km" in str(refusal.value)
    assert (out.exists(), capsys.readouterr().out) == (False, "")


def test_the_same_seed_and_iterations_give_the_same_plan_and_any_seed_will_do(capsys):
    plans = []
    for _ in range(2):
        call_command(
            "solve_week", str(FIXTURES / "three_farms.json"), "--iterations", "20", "--seed", str(10**30)
        )
        plans.append(json.loads(capsys.readouterr().out) | {"seconds": 0})
    assert plans[0] == plans[1]


def test_a_proof_on_request_puts_the_bound_into_the_plan(tmp_path):
    path, out = tmp_path / "week.json", tmp_path / "plan.json"
    path.write_text(json.dumps(made_up_week(12, 1, 1, 0.3)))
    call_command("solve_week", str(path), "--iterations", "200", "--prove", "300", "--out", str(out))
    plan = json.loads(out.read_text())
    assert 0 < plan["bound"] <= plan["cost"]["total"]
    call_command("audit_week", str(path), str(out))
