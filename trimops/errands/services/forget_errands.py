"""A farm is erased: what errands had to say of it goes too."""

from django.db import transaction

from trimops.errands.models import Errand
from trimops.kernel.scope import Scope

ERASED = "What went wrong was said of a farm that has been erased."


@transaction.atomic
def forget_errands(*, scope: Scope, name: str) -> int:
    """Blot the words of errands that name it; how many. The errand of something erased finds it gone, and is done."""
    if not name.strip():
        return 0
    rows = Errand.objects.within(scope).filter(last_words__icontains=name)
    return rows.update(last_words=ERASED)
