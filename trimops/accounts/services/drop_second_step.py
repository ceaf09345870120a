"""Somebody lost every second step of theirs, and was known by whoever keeps the machine."""

from datetime import datetime

from allauth.mfa.models import Authenticator
from django.db import transaction

from trimops.accounts.models import User
from trimops.accounts.services.end_sessions import end_sessions
from trimops.accounts.services.tell_person import tell_person

WORDS = (
    "Good day,\n\nyour second step was taken away by those who keep this site: app, passkeys and codes on paper. "
    "You were signed out everywhere. Your password alone lets you in now; set a second step up again at once.\n\n"
    "If you did not ask for this, ask for a new password on the sign-in page and tell the owner of your business.\n"
)


@transaction.atomic
def drop_second_step(*, user: User, at: datetime) -> int:
    """App, passkeys and codes go, all sign-ins end, the person is told by mail; how many steps there were.

    Where there were none, nothing happens.
    """
    rows = Authenticator.objects.filter(user=user)
    steps: int = rows.exclude(type=Authenticator.Type.RECOVERY_CODES).count()
    if not rows.exists():
        return 0
    rows.delete()
    end_sessions(user=user)
    tell_person(user=user, subject="Your second step was taken away", body=WORDS, at=at)
    return steps
