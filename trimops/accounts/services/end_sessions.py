"""Sign-ins of a person end: all of them, or one."""

from allauth.usersessions.models import UserSession
from django.contrib.sessions.models import Session
from django.db import transaction

from trimops.accounts.models import User


def end_sessions(*, user: User) -> int:
    """Wherever the person is signed in, they are not any more; how many there were.

    A session keeps the address that its person signed in with, packed so that no search finds it: all are looked at.
    """
    ended = 0
    for session in Session.objects.iterator(chunk_size=500):
        if session.get_decoded().get("_auth_user_id") == str(user.pk):
            session.delete()
            ended += 1
    UserSession.objects.filter(user=user).delete()
    return ended


@transaction.atomic
def end_all_sessions() -> int:
    """Nobody is signed in anywhere any more; how many sign-ins there were."""
    ended, _ = Session.objects.all().delete()
    UserSession.objects.all().delete()
    return ended


@transaction.atomic
def end_session(*, place: UserSession) -> None:
    """That one sign-in ends; what a phone keeps of the crush stays on it until its person signs in again."""
    place.end()
