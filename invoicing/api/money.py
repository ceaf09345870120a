"""Amounts of money in the API: decimal strings, with the decimals of their currency when they are shown."""

from collections.abc import Callable
from decimal import Decimal
from typing import cast

from django.db.models import Model
from rest_framework import serializers
from rest_framework.fields import get_attribute

from invoicing.domain.minor_units import minor_digits
from trimops.api.rows import RowContent
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope

Told = dict[str, object]
CURRENCY = "Of ISO 4217; every amount here is in it."


class MoneyShown(serializers.DecimalField):
    """An amount as it is known; `of` leads from what is shown to the currency ("": it is rounded already)."""

    def __init__(self, of: str = "currency", *, allow_null: bool = False, help_text: str = "") -> None:
        self.of = of.split(".") if of else []
        super().__init__(
            18, 4, read_only=True, allow_null=allow_null, help_text=help_text or "Money, in the currency."
        )

    def get_attribute(self, instance: object) -> Decimal | None:
        amount = super().get_attribute(instance)
        if amount is None or not self.of:
            return amount
        return round_money(amount, minor_digits(str(get_attribute(instance, self.of))))

    def to_representation(self, value: Decimal) -> str:
        return f"{value:f}"


class Amount(serializers.DecimalField):
    """An amount, a price or a quantity that is said: from nought on, with four decimals at most."""

    def __init__(
        self,
        *,
        digits: int = 14,
        places: int = 4,
        least: Decimal | None = Decimal(0),
        most: Decimal | None = None,
        required: bool = True,
        allow_null: bool = False,
        help_text: str = "",
    ) -> None:
        super().__init__(
            digits,
            places,
            min_value=least,
            max_value=most,
            required=required,
            allow_null=allow_null,
            help_text=help_text,
        )


def paid_amount(help_text: str, *, required: bool = True) -> Amount:
    """Money that changes hands, so more than nought."""
    return Amount(least=Decimal("0.0001"), required=required, help_text=help_text)


class Why(serializers.CharField):
    """A reason that is kept."""

    def __init__(self, help_text: str = "Why: kept with it.", *, max_length: int = 200) -> None:
        super().__init__(max_length=max_length, help_text=help_text)


class Kept(RowContent):
    """A row as it is shown. `for_staff` names what a farm client is not told: null."""

    for_staff: tuple[str, ...] = ()

    def to_representation(self, instance: Model) -> Told:
        told: Told = super().to_representation(instance)
        scope: Scope = self.context["scope"]
        return told | dict.fromkeys(self.for_staff) if scope.is_farm_client else told


def several(
    content: type[serializers.Serializer],  # type: ignore[type-arg]
    **options: object,
) -> "serializers.ListSerializer":  # type: ignore[type-arg]
    """A list of such contents; `min_length` and `max_length` bound it."""
    # because: the library makes the list in `__new__`, of which its stubs know nothing
    made = cast("Callable[..., serializers.ListSerializer]", content)  # type: ignore[type-arg]
    return made(many=True, **options)
