"""How one farm is billed: how often, with which tax, and where its papers go."""

from rest_framework import serializers

from farms.models import Farm
from invoicing.api.money import Kept, Told
from invoicing.domain.code_lists import COUNTRIES
from invoicing.models import FarmTerms
from invoicing.selectors.farm_terms import farm_terms
from invoicing.services.save_farm_terms import save_farm_terms
from trimops.accounts.actions import Action
from trimops.api.fields import Exactly
from trimops.api.kinds import RowApi, set_fields
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent

TOLD = [
    *("rhythm", "tax_code", "order_number", "buyer_reference", "send_to", "sends_xml", "payment_days"),
    *("gets_reminders", "note"),
]


class TermsWord(RowContent):
    """What is different for one farm. `country` is that of who pays: the farm's payer, else the farm."""

    send_to = serializers.ListField(
        child=serializers.EmailField(max_length=254), max_length=20, help_text="Empty: that of who pays."
    )
    country = Exactly(r"^([A-Z]{2})?$", max_length=2, allow_blank=True, help_text="Empty: as the business.")

    class Meta:
        model = FarmTerms
        fields = [*TOLD, "country"]

    def validate_country(self, country: str) -> str:
        if country and country not in COUNTRIES:
            raise serializers.ValidationError("There is no such country: two letters, such as IE or NL.")
        return country


class TermsShown(Kept):
    """How one farm is billed."""

    send_to = serializers.ListField(child=serializers.CharField(), read_only=True)
    country = serializers.CharField(read_only=True)

    class Meta:
        model = FarmTerms
        fields = ["farm", *TOLD, "country"]
        read_only_fields = fields

    def to_representation(self, instance: FarmTerms) -> Told:  # type: ignore[override]
        farm = instance.farm
        # because: it is kept with who pays, and is said and shown here
        instance.__dict__["country"] = (farm.payer or farm).country
        return super().to_representation(instance)


class TermsApi(RowApi[FarmTerms]):
    """How one farm is billed. Issued invoices stay; drafts take a change up when they are drafted again.

    Refused: `tax_code_unknown`, `farm_is_erased`.
    """

    model = FarmTerms
    ops = {
        "get": Op(Action.SEE_MONEY, "read_farm_terms", "How a farm is billed", shows=TermsShown),
        "patch": Op(
            Action.KEEP_MONEY,
            "change_farm_terms",
            "Change how a farm is billed",
            takes=TermsWord,
            shows=TermsShown,
            changes=True,
        ),
    }

    def row(self, *, is_locked: bool = False) -> FarmTerms:
        farm = self.fetch(Farm, self.kwargs["pk"], "payer", "business")
        if is_locked:
            farm.locked()  # because: a farm of which nothing was put down has no row of terms to lock
        found = farm_terms(farm)
        found.farm = farm
        return found

    def change(self, row: FarmTerms, content: Said) -> FarmTerms:
        country: str = content.pop("country", (row.farm.payer or row.farm).country)
        set_fields(row, content)
        save_farm_terms(terms=row, country=country, at=self.now, by=self.seat.user)
        return self.row()
