"""Marks are kept at once; what fails says what failed."""

import pytest
from django.contrib.sessions.backends.base import UpdateError
from django.contrib.sessions.backends.db import SessionStore
from django.db import OperationalError, connection

from trimops.accounts.services.mark_session import mark_session


@pytest.fixture
def session(db):
    kept = SessionStore()
    kept["who"] = "somebody"
    kept.create()
    kept.modified = False
    return kept


def test_it_is_kept_at_once_and_nothing_is_left_to_keep(session):
    mark_session(session=session, marks={"heard": 12.5})
    assert SessionStore(session.session_key)["heard"] == 12.5
    assert session.modified is False


def test_what_else_was_to_be_kept_is_still_to_be_kept(session):
    session["more"] = 1
    mark_session(session=session, marks={"heard": 12.5})
    assert session.modified is True


def test_a_sign_in_that_was_ended_meanwhile_is_told(session):
    SessionStore(session.session_key).delete()
    with pytest.raises(UpdateError):
        mark_session(session=session, marks={"heard": 12.5})


def test_a_fault_of_the_database_stays_one(session):
    def give_out(execute, sql, params, many, context):
        if sql.startswith("UPDATE"):
            raise OperationalError("the disk is gone")
        return execute(sql, params, many, context)

    with connection.execute_wrapper(give_out), pytest.raises(OperationalError, match="the disk is gone"):
        mark_session(session=session, marks={"heard": 12.5})
