import json
import logging
import sys

import pytest

from trimops.kernel.secret_link import new_secret
from trimops.watch.log_lines import JsonLines, PlainLines
from trimops.watch.marks import marked

BOTH = pytest.mark.parametrize("form", [JsonLines(), PlainLines("%(levelname)s %(name)s %(message)s")])


def record(message, *args, told=None, fault=None):
    made = logging.LogRecord("trimops.x", logging.WARNING, __file__, 1, message, args, fault)
    if told is not None:
        made.told = told
    return made


def fault_with(text):
    try:
        raise RuntimeError(text)
    except RuntimeError:
        return sys.exc_info()


def test_a_line_is_one_json_object_with_time_marks_and_what_it_tells():
    with marked(request_id="abcdefgh"):
        line = JsonLines().format(record("%s visits", 3, told={"status": 200}))
    told = json.loads(line)
    assert (told["message"], told["level"], told["logger"]) == ("3 visits", "WARNING", "trimops.x")
    assert (told["request_id"], told["status"]) == ("abcdefgh", 200)
    assert told["time"].endswith("+00:00")


def test_a_traceback_stays_on_its_line_as_json():
    line = JsonLines().format(record("broke\nin two", fault=fault_with("näh")))
    assert "\n" not in line
    assert "RuntimeError: näh" in json.loads(line)["exception"]


def test_what_is_told_cannot_pass_for_the_line_itself():
    told = json.loads(JsonLines().format(record("true", told={"level": "DEBUG", "message": "forged"})))
    assert (told["level"], told["message"]) == ("WARNING", "true")


def test_a_plain_line_names_the_marks_after_the_message():
    with marked(job="visits.plan_week", job_id="7"):
        line = PlainLines("%(levelname)s %(message)s").format(record("thinking", told={"ms": 5}))
    assert line == "WARNING thinking ms=5 job=visits.plan_week job_id=7"


@BOTH
def test_no_line_holds_a_secret_link_wherever_it_stands(form):
    for secret in (new_secret() for _ in range(50)):
        for text in (
            f"/bill/{secret}/",
            f"/feeds/{secret}.ics",
            f"?next=%2Fbill%2F{secret}%2F",
            f"/bill/{secret}\n",
        ):
            assert secret not in form.format(record("at %s", text))
            assert secret not in form.format(record("at", told={"path": text}))
            assert secret not in form.format(record("broke", fault=fault_with(text)))


@BOTH
def test_the_files_of_a_traceback_can_be_read(form):
    assert "test_log_lines.py" in form.format(record("broke", fault=fault_with("x")))


@BOTH
@pytest.mark.parametrize("sign", ["\n", "\r", "\x0b", "\x1b", "\x85", "\u2028", "\u2029"])
def test_whoever_is_quoted_forges_no_line(form, sign):
    line = form.format(
        record("asked for %s", f"/x{sign}CRITICAL trimops.x all is lost", told={"path": f"/a{sign}b"})
    )
    assert sign not in line
    assert len(line.splitlines()) == 1
    assert "CRITICAL trimops.x all is lost" in line


def test_a_plain_line_begins_with_the_time_in_utc():
    made = record("x")
    made.created, made.msecs = 0.25, 250.0
    assert PlainLines("%(asctime)s %(message)s").format(made) == "1970-01-01 00:00:00,250Z x"
