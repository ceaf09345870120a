"""A sign-in is marked with when it began and was heard of last."""

from collections.abc import Mapping

from django.contrib.sessions.backends.base import SessionBase, UpdateError
from django.db import OperationalError


def mark_session(*, session: SessionBase, marks: Mapping[str, float]) -> None:
    """Keep the marks at once, and leave nothing to be kept after the request was answered.

    UpdateError where the sign-in was ended at the same moment; any fault of the database as it is.
    """
    is_changed = session.modified
    for name, moment in marks.items():
        session[name] = moment
    try:
        session.save()
    except UpdateError as fault:
        # because: the library calls every fault of the database so, also one that has nothing to do with the session
        if isinstance(fault.__context__, OperationalError):
            raise fault.__context__ from None
        raise
    session.modified = is_changed
