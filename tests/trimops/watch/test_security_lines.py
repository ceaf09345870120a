"""Lines about who came in and who did not: written whatever the log's level, with numbers instead of names."""

import json
import logging

import pytest

from trimops.settings.watching import logging_from
from trimops.watch.doing import Doing, done_by
from trimops.watch.log_lines import JsonLines
from trimops.watch.security_lines import note_security


@pytest.fixture
def told(caplog):
    caplog.set_level(logging.INFO, logger="trimops.security")
    return lambda: [record.told for record in caplog.records if record.name == "trimops.security"]


def test_who_is_at_work_and_from_where_stands_in_the_line(told):
    with done_by(Doing(by=7, seen_from="203.0.113.9")):
        note_security("token_made", program=3)
    assert told() == [{"event": "token_made", "by": 7, "seen_from": "203.0.113.9", "program": 3}]


def test_what_the_caller_knows_better_stands_instead(told):
    with done_by(Doing(by=7, seen_from="203.0.113.9")):
        note_security("sign_in", by=8, seen_from="203.0.113.1")
    assert (told()[0]["by"], told()[0]["seen_from"]) == (8, "203.0.113.1")


def test_of_a_stranger_nothing_is_made_up(told):
    note_security("sign_in_failed")
    assert told() == [{"event": "sign_in_failed"}]


def test_an_event_that_is_not_of_the_list_is_a_fault():
    with pytest.raises(KeyError):
        note_security("something_else")


@pytest.mark.parametrize("form", ["plain", "json"])
def test_they_are_written_where_the_log_is_quiet(form):
    loggers = logging_from(form, "ERROR")["loggers"]
    assert loggers["trimops.security"] == {"level": "INFO"}


def test_a_number_of_a_program_is_not_taken_for_a_secret(caplog):
    caplog.set_level(logging.INFO, logger="trimops.security")
    note_security("token_revoked", program=1234567)
    assert json.loads(JsonLines().format(caplog.records[-1]))["program"] == 1234567
