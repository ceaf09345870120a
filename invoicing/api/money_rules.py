"""How a business keeps its money: numbers, rounding, bank, terms, reminders, logo."""

import base64
from decimal import Decimal

from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from invoicing.api.bank_shown import BASE64
from invoicing.api.money import Amount, Kept, Told, several
from invoicing.models import MoneyRules
from invoicing.selectors.money_rules import money_rules
from invoicing.services.save_money_rules import save_money_rules
from trimops.accounts.actions import Action
from trimops.api.fields import Exactly
from trimops.api.kinds import DoApi, RowApi, set_fields
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent
from trimops.kernel.scope import Scope

TOLD = [
    *("rounding_rule", "tax_name", "registration_name", "registration_number", "invoice_prefix"),
    *("credit_prefix", "series_by_year", "account_name", "iban", "bic", "credit_terms"),
    *("cash_discount_percent", "cash_discount_days", "reminder_days", "charges_interest", "interest_margin"),
    *("interest_days_in_year", "rate_rule", "fixed_sums", "distance_unit", "bills_from", "books_begin_month"),
]
MOST_LOGO = 700_000
MOST_DAYS = 3650


class FixedSum(serializers.Serializer):  # type: ignore[type-arg]
    """From this debt on, this sum is claimed once."""

    debt = Amount(digits=12, places=2)
    sum = Amount(digits=12, places=2)

    def to_representation(self, instance: list[str]) -> Told:
        debt, claimed = instance
        found: dict[str, object] = super().to_representation(
            {"debt": Decimal(str(debt)), "sum": Decimal(str(claimed))}
        )
        return found


class HasLogo(serializers.BooleanField):
    """Whether there is a logo."""

    def __init__(self) -> None:
        super().__init__(read_only=True)

    def get_attribute(self, instance: MoneyRules) -> bool:
        return bool(instance.logo)


def days_field(*, read_only: bool = False) -> serializers.ListField:
    """Days after the due day of each step; none: no reminders."""
    return serializers.ListField(
        child=serializers.IntegerField(min_value=1, max_value=MOST_DAYS),
        read_only=read_only,
        help_text="Days after the due day of each step, each more than the one before.",
    )


class RulesWord(RowContent):
    """What is left out stays."""

    interest_margin = Amount(digits=5, places=2, help_text="Points above the reference rate.")
    reminder_days = days_field()
    fixed_sums = several(FixedSum, max_length=20)

    class Meta:
        model = MoneyRules
        fields = TOLD

    def validate_fixed_sums(self, sums: list[Said]) -> list[list[str]]:
        # because: kept as text, for JSON knows no decimals
        return [[f"{one['debt']:f}", f"{one['sum']:f}"] for one in sums]


class RulesShown(Kept):
    """How the business keeps its money."""

    reminder_days = days_field(read_only=True)
    fixed_sums = several(FixedSum, read_only=True)
    has_logo = HasLogo()

    class Meta:
        model = MoneyRules
        fields = [*TOLD, "has_logo"]
        read_only_fields = fields


class LogoWord(serializers.Serializer):  # type: ignore[type-arg]
    """The logo: PNG or JPEG in base64, 500 kB at most; null takes it off."""

    picture = Exactly(BASE64, max_length=MOST_LOGO, allow_null=True)


class RulesApi(RowApi[MoneyRules]):
    """How the business keeps its money. Papers from now on go by it; those issued stay.

    Refused: `rules_make_no_sense`.
    """

    model = MoneyRules
    ops = {
        "get": Op(Action.SEE_MONEY, "read_money_rules", "How the money is kept", shows=RulesShown),
        "patch": Op(
            Action.KEEP_MONEY,
            "change_money_rules",
            "Change how the money is kept",
            takes=RulesWord,
            shows=RulesShown,
            changes=True,
        ),
    }

    def row(self, *, is_locked: bool = False) -> MoneyRules:
        return locked_rules(self.scope) if is_locked else money_rules(self.scope)

    def change(self, row: MoneyRules, content: Said) -> MoneyRules:
        set_fields(row, content)
        return save_money_rules(rules=row)


class LogoApi(DoApi):
    """The logo as it was handed in. Refused: `rules_make_no_sense` for what is no picture, or too large."""

    ops = {
        "get": Op(Action.SEE_MONEY, "read_logo", "The logo", shows=LogoWord),
        "post": Op(
            Action.KEEP_MONEY, "set_logo", "Set the logo", takes=LogoWord, shows=RulesShown, repeats=True
        ),
    }

    def get(self, request: Request, **kwargs: object) -> Response:
        logo = money_rules(self.scope).logo
        return self.answer(self.show({"picture": base64.b64encode(bytes(logo)).decode() if logo else None}))

    def act(self, content: Said) -> MoneyRules:
        rules, picture = locked_rules(self.scope), content["picture"]
        rules.logo = base64.b64decode(picture) if picture else None
        return save_money_rules(rules=rules)


def locked_rules(scope: Scope) -> MoneyRules:
    """The rules under lock; those of a business that has put nothing down are no row yet."""
    found = money_rules(scope)
    return found.locked() if found.pk else found
