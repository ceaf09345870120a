"""Something was erased: what answers to calls told of it goes, and the calls stay done."""

from django.db import transaction

from trimops.api.models import RepeatableCall
from trimops.kernel.scope import Scope


@transaction.atomic
def forget_answers(*, scope: Scope) -> int:
    """Empty every answer that is kept for repeats; how many. A call that is repeated has its status again, and no body.

    All of the business's, because a name may stand in any of them; none is kept longer than a week.
    """
    return RepeatableCall.objects.within(scope).filter(body__isnull=False).update(body=None)
