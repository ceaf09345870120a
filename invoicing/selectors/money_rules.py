"""How a business keeps its money, whether or not it has put anything down."""

from invoicing.models import MoneyRules
from trimops.kernel.scope import Scope


def money_rules(scope: Scope) -> MoneyRules:
    """The row of the business, or one not saved yet with what holds by itself."""
    row = MoneyRules.objects.within(scope).first()
    return row or MoneyRules(business_id=scope.business_id)
