"""A quantity in a form, typed with comma or point."""

from decimal import Decimal

from django import forms
from django.core.exceptions import ValidationError

from visits.domain.kit.plan_kit_list import cell_words
from visits.domain.kit.read_quantity import read_quantity


class QuantityField(forms.DecimalField):
    """Decimal of so many `places` at most, from `least` (nought) on; shown without idle zeros, 12.5 for 12.50."""

    def __init__(
        self,
        *,
        label: str,
        required: bool = False,
        places: int = 2,
        least: str | None = "0",
        most: str | None = None,
        help_text: str = "",
    ) -> None:
        super().__init__(
            label=label,
            required=required,
            help_text=help_text,
            min_value=None if least is None else Decimal(least),
            max_value=None if most is None else Decimal(most),
            max_digits=10,
            decimal_places=places,
            widget=forms.TextInput(attrs={"inputmode": "decimal", "autocomplete": "off"}),
        )

    def to_python(self, value: object) -> Decimal | None:  # type: ignore[override]  # because: stubs say int
        if value in self.empty_values or not str(value).strip():
            return None
        try:
            return super().to_python(str(read_quantity(str(value), self.decimal_places or 0)))
        except ValueError as fault:
            said = str(fault)
            raise ValidationError(said[0].upper() + said[1:] + ".") from fault

    def prepare_value(self, value: object) -> object:
        return cell_words(value) if isinstance(value, Decimal) else value
