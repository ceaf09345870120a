"""`manage.py audit_week`: what it prints and how it ends."""

import json
import subprocess
import sys

import pytest
from django.core.management import CommandError, call_command

from tests.visits.domain.planning.audit.spoil import WEEKS, spoilt, week

PROBLEM = WEEKS / "audit_plain_problem.json"
PLAN = WEEKS / "audit_plain_plan.json"


def test_a_clean_plan_prints_no_line_and_says_so_beside(capsys):
    call_command("audit_week", PROBLEM, PLAN)
    printed = capsys.readouterr()
    assert printed.out == ""
    assert "No breach." in printed.err


def test_a_breach_is_one_line_whatever_the_names_in_it(tmp_path, capsys):
    _, plan = week("plain")
    spoilt_plan = tmp_path / "plan.json"
    spoilt_plan.write_text(json.dumps(spoilt(plan, ("left_out.0.job", "j\n7\u2028\ud800"))))
    with pytest.raises(SystemExit):
        call_command("audit_week", PROBLEM, spoilt_plan)
    assert capsys.readouterr().out.splitlines()[:2] == [
        "left_out[0].job: there is no job j\\n7\\u2028\\ud800",
        "left_out: j6 is neither planned nor left out",
    ]


def test_breaches_come_one_to_a_line_and_end_with_1(tmp_path, capsys):
    _, plan = week("plain")
    spoilt_plan = tmp_path / "plan.json"
    spoilt_plan.write_text(json.dumps(spoilt(plan, ("shifts.0.cows", 1), ("cost.lateness", 1))))
    with pytest.raises(SystemExit) as end:
        call_command("audit_week", PROBLEM, spoilt_plan)
    assert end.value.code == 1
    assert capsys.readouterr().out.splitlines() == [
        "shifts[0].cows: says 1, the jobs add up to 50",
        "cost.lateness: says 1, it comes to 1000",
    ]


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"seed": NaN}', '{"a": 1, "a": 2}', "[" * 100_000, '{"n": ' + "9" * 5000 + "}"]
)
def test_what_is_no_document_ends_with_2(tmp_path, text):
    bad = tmp_path / "bad.json"
    bad.write_text(text)
    for pair in ((bad, PLAN), (PROBLEM, bad)):
        with pytest.raises(CommandError) as refusal:
            call_command("audit_week", *pair)
        assert refusal.value.returncode == 2
        assert str(refusal.value).startswith(str(bad))


def test_a_malformed_problem_a_missing_file_and_bytes_that_are_no_text_end_with_2(tmp_path):
    noise = tmp_path / "noise.json"
    noise.write_bytes(b"\xff\xfe")
    for problem in (PLAN, noise, tmp_path / "none.json"):
        with pytest.raises(CommandError) as refusal:
            call_command("audit_week", problem, PLAN)
        assert refusal.value.returncode == 2


def test_the_shell_sees_the_exit_code_and_the_faults_on_standard_error():
    order = [
        sys.executable,
        "manage.py",
        "audit_week",
        str(PLAN),
        str(PLAN),
        "--settings=trimops.settings.test",
    ]
    end = subprocess.run(order, cwd=WEEKS.parents[1], capture_output=True, text=True, check=False)
    assert (end.returncode, end.stdout) == (2, "")
    assert "format: is not trimops-week-problem/1" in end.stderr
