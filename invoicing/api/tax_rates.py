"""Tax rates, by the day from which they hold, and what the country's are."""

from decimal import Decimal

from rest_framework import serializers

from invoicing.api.money import Amount, Kept
from invoicing.models import TaxRate
from invoicing.models.prices import TAX_CATEGORIES
from invoicing.selectors.tax_schemes import tax_scheme_of
from invoicing.services.drop_tax_rate import drop_tax_rate
from invoicing.services.set_tax_rate import RateWord, set_tax_rate
from trimops.accounts.actions import Action
from trimops.api.asked import Words
from trimops.api.fields import Day, Exactly
from trimops.api.kinds import RowApi, RowsApi, ToldApi
from trimops.api.op import Filter, Op, Said

TOLD = ("code", "name", "category", "percent", "valid_from", "reason", "reason_code")


class TaxRateWord(serializers.Serializer):  # type: ignore[type-arg]
    """A rate from a day on; where no tax is due, why. Ask your accountant whether it is right for your work."""

    code = Exactly(r"^[-a-zA-Z0-9_]+$", max_length=20, help_text="One word: standard, reduced.")
    name = serializers.CharField(max_length=60, allow_blank=True, default="")
    category = serializers.ChoiceField(TAX_CATEGORIES, help_text="Of UNCL 5305, as EN 16931 uses it.")
    percent = Amount(digits=5, places=2, most=Decimal(100))
    valid_from = Day()
    reason = serializers.CharField(
        max_length=200, allow_blank=True, default="", help_text="Why no tax is charged."
    )
    reason_code = serializers.CharField(
        max_length=30, allow_blank=True, default="", help_text="Of the VATEX list, if one fits."
    )


class TaxRateShown(Kept):
    """A rate that holds from a day on."""

    class Meta:
        model = TaxRate
        fields = ["id", *TOLD]
        read_only_fields = fields


class SuggestedRate(serializers.Serializer):  # type: ignore[type-arg]
    """A rate as the country has it, and where that was read."""

    code = serializers.CharField()
    name = serializers.CharField()
    category = serializers.CharField()
    percent = serializers.DecimalField(5, 2)
    valid_from = serializers.DateField()
    reason = serializers.CharField()
    reason_code = serializers.CharField()
    source = serializers.CharField()  # type: ignore[assignment]


class SuggestionsTold(serializers.Serializer):  # type: ignore[type-arg]
    """What is known of the country's tax; nothing is put down by this."""

    country = serializers.CharField(help_text="Of the business.")
    tax_name = serializers.CharField()
    rates = SuggestedRate(many=True)


class TaxRatesApi(RowsApi[TaxRate]):
    """Tax rates. Refused: `rate_makes_no_sense`, `rate_holds_then`, `period_locked`."""

    model = TaxRate
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_tax_rates",
            "The tax rates",
            shows=TaxRateShown,
            lists=True,
            filters={"code": Filter(Words(max_length=20), "code")},
            orders={"code": ("code",), "newest": ("-valid_from", "-id"), "id": ("id",)},
        ),
        "post": Op(
            Action.KEEP_PRICES,
            "set_tax_rate",
            "A tax rate from a day on",
            takes=TaxRateWord,
            shows=TaxRateShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> TaxRate:
        return set_tax_rate(business=self.seat.business, word=RateWord(**content))


class TaxRateApi(RowApi[TaxRate]):
    """A tax rate. One at which work was billed stays (`rate_billed_on`); one in use is not dropped (`rate_in_use`)."""

    model = TaxRate
    ops = {
        "get": Op(Action.SEE_MONEY, "read_tax_rate", "One tax rate", shows=TaxRateShown),
        "patch": Op(
            Action.KEEP_PRICES,
            "change_tax_rate",
            "Mend a tax rate",
            takes=TaxRateWord,
            shows=TaxRateShown,
            changes=True,
        ),
        "delete": Op(Action.KEEP_PRICES, "drop_tax_rate", "Drop a tax rate", status=204, changes=True),
    }

    def change(self, row: TaxRate, content: Said) -> TaxRate:
        word = RateWord(**({name: getattr(row, name) for name in TOLD} | content))
        return set_tax_rate(business=self.seat.business, word=word, instead_of=row)

    def remove(self, row: TaxRate) -> None:
        drop_tax_rate(rate=row)


class SuggestionsApi(ToldApi):
    """Rates of the business's country, to begin with. No rates where nothing is known of it."""

    ops = {
        "get": Op(Action.SEE_MONEY, "read_tax_suggestions", "The country's tax rates", shows=SuggestionsTold)
    }

    def told(self) -> object:
        country = self.seat.business.country
        scheme = tax_scheme_of(country)
        rates = scheme.rates if scheme else ()
        return {"country": country, "tax_name": scheme.tax_name if scheme else "", "rates": rates}
