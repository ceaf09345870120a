"""A sign-in goes on under another key."""

from allauth.usersessions.models import UserSession
from django.contrib.sessions.backends.base import SessionBase
from django.db import transaction


@transaction.atomic
def renew_session(*, session: SessionBase) -> str:
    """The new key; with the old one nobody is signed in any more. The list of places keeps its line for it."""
    before = session.session_key
    session.cycle_key()
    after = session.session_key or ""
    UserSession.objects.filter(session_key=before).update(session_key=after)
    return after
