"""What is asked for a tub of disinfectant."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from django import forms
from django.http import QueryDict

from visits.domain.kit.disinfectant_amount import read_dilution
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.tub_mix import LEAST_LITRES, MOST_LITRES, TubMix, tub_mix
from visits.models import Consumable

DILUTION_HELP = (
    "As on the label: 1:100, 2 %, 2 % w/v, 20 g/l. Left empty: what the chosen product's label says."
)


@dataclass(frozen=True)
class Answer:
    """What goes into the tub, of what, for how long."""

    mix: TubMix
    dilution: str
    product: Consumable | None


class TubForm(forms.Form):
    """A product of the stock by its label, or a dilution typed; and the size of the tub."""

    product = forms.ChoiceField(label="Product", required=False)
    dilution = forms.CharField(label="How strong", required=False, max_length=40, help_text=DILUTION_HELP)
    litres = forms.DecimalField(
        label="Litres in the tub", min_value=LEAST_LITRES, max_value=MOST_LITRES, decimal_places=1, initial=10
    )

    def __init__(self, data: QueryDict | None, *, products: Sequence[Consumable]) -> None:
        initial = {"product": str(products[0].pk)} if products else {}
        super().__init__(data, initial=initial)
        self.products = {str(product.pk): product for product in products}
        choices = [
            (key, f"{product.name} ({product.dilution or 'no dilution on its label'})")
            for key, product in self.products.items()
        ]
        self.fields["product"].choices = [*choices, ("", "Something else")]  # type: ignore[attr-defined]

    def clean(self) -> None:
        super().clean()
        told = self._dilution()
        if not told:
            self.add_error("dilution", "Say how strong, as the label says it: 1:100, or 2 % w/v.")
        elif read_dilution(told) is None:
            self.add_error(
                "dilution", f"“{told}” cannot be read. Write 1:100, 2 %, 2 % w/v, 2 % v/v or 20 g/l."
            )

    def answer(self, in_van: dict[int, Decimal]) -> Answer | None:
        """Once the form is valid; `in_van` by consumable."""
        product, told = self._product(), self._dilution()
        mix = tub_mix(
            told,
            self.cleaned_data["litres"],
            counted_in=Unit(product.unit) if product else None,
            in_van=in_van.get(product.pk) if product else None,
        )
        return Answer(mix, told, product) if mix else None

    def _product(self) -> Consumable | None:
        return self.products.get(self.cleaned_data.get("product", ""))

    def _dilution(self) -> str:
        typed: str = self.cleaned_data.get("dilution", "")
        product = self._product()
        return typed.strip() or (product.dilution if product else "")
