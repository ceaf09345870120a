"""When and from where a token was used last."""

from datetime import datetime, timedelta

from django.db.models import Q

from trimops.accounts.models import ApiToken

AT_MOST_EACH = timedelta(minutes=10)


def note_token_use(*, token: ApiToken, address: str | None, at: datetime) -> bool:
    """Kept at most once in ten minutes, so that a busy program does not write at every call; whether it was."""
    if token.last_used_at is not None and token.last_used_at > at - AT_MOST_EACH:
        return False
    stale = Q(last_used_at__isnull=True) | Q(last_used_at__lte=at - AT_MOST_EACH)
    rows = ApiToken.objects.filter(stale, pk=token.pk)
    return bool(rows.update(last_used_at=at, last_used_from=address))
