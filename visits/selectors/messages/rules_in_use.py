"""What a business has switched on of the messages to farms."""

from collections.abc import Collection

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules


def rules_of(business: Business) -> MessageRules:
    """Its own, else the usual ones, unsaved, with nothing switched on. One query."""
    found = MessageRules.objects.within(Scope(business.pk)).first() or MessageRules()
    found.business = business
    return found


def any_on(scope: Scope, kinds: Collection[MessageKind]) -> bool:
    """Whether one of these kinds goes by itself. One query."""
    own = MessageRules.objects.within(scope).first()
    return own is not None and any(own.is_on(kind) for kind in kinds)
