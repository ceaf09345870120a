"""An amount in a form, typed with comma or point."""

from decimal import Decimal
from typing import ClassVar

from django import forms
from django.core.exceptions import ValidationError

from invoicing.domain.read_amount import read_amount
from invoicing.domain.read_price_lines import plain_amount


class AmountField(forms.DecimalField):
    """Decimal from nought on, with four decimals at most unless told otherwise; shown short, 12.50 for 12.5000."""

    least: ClassVar = Decimal(0)
    words: ClassVar[dict[str, str]] = {}

    def __init__(
        self,
        *,
        label: str,
        required: bool = True,
        decimal_places: int = 4,
        help_text: str = "",
    ) -> None:
        widget = forms.TextInput(attrs={"inputmode": "decimal", "autocomplete": "off"})
        super().__init__(
            label=label,
            required=required,
            help_text=help_text,
            min_value=self.least,
            max_digits=14,
            decimal_places=decimal_places,
            widget=widget,
            error_messages=self.words,
        )

    def to_python(self, value: object) -> Decimal | None:  # type: ignore[override]  # because: stubs say int
        if value in self.empty_values:
            return None
        try:
            return super().to_python(read_amount(str(value)))
        except ValueError as fault:
            raise ValidationError(str(fault)) from fault

    def prepare_value(self, value: object) -> object:
        return plain_amount(value) if isinstance(value, Decimal) else value


class PaidField(AmountField):
    """An amount of money that changes hands, so more than nought."""

    least: ClassVar = Decimal("0.0001")
    words: ClassVar = {"min_value": "Write an amount above 0."}
