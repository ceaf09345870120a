"""What was agreed with a farm about its prices."""

from rest_framework import serializers

from farms.models import Farm
from invoicing.api.money import Amount, Kept, Why
from invoicing.domain.agreed_prices import AgreementKind
from invoicing.domain.pricing import PriceItem
from invoicing.models import Agreement
from invoicing.services.end_agreement import end_agreement
from invoicing.services.save_agreement import AgreementWord, save_agreement
from trimops.accounts.actions import Action
from trimops.api.fields import Day, OneOf
from trimops.api.kinds import RowApi, RowsApi, StepApi
from trimops.api.op import Op, Said
from trimops.kernel.clock import local_day
from trimops.tenancy.querysets import TenantQuerySet


class ItemShown(OneOf):
    """For what; null: for everything but the minimum charge."""

    def __init__(self) -> None:
        words = "null: for everything but the minimum charge."
        super().__init__(PriceItem, read_only=True, allow_null=True, help_text=words)

    def get_attribute(self, instance: Agreement) -> str | None:
        return instance.item or None


class AgreementShown(Kept):
    """Percent off, or a price of its own, without tax."""

    item = ItemShown()

    class Meta:
        model = Agreement
        fields = ["id", "farm", "kind", "item", "amount", "why", "valid_from", "valid_until"]
        read_only_fields = fields


class AgreedWord(serializers.Serializer):  # type: ignore[type-arg]
    """Percent off, or a price without tax; for one item, or for everything."""

    kind = OneOf(AgreementKind)
    amount = Amount(help_text="Percent off, or the price.")
    item = OneOf(PriceItem, default=None, allow_null=True, help_text="null: for everything but the minimum.")
    why = Why("Printed beside the line.")
    valid_from = Day()
    valid_until = Day(default=None, allow_null=True, help_text="The last day; null: no end.")


class EndedTold(serializers.Serializer):  # type: ignore[type-arg]
    """The agreement as it is now; null where it had not begun and is gone."""

    agreement = AgreementShown(allow_null=True)


class AgreementsApi(RowsApi[Agreement]):
    """What was agreed with one farm.

    Refused: `agreement_makes_no_sense`, `period_locked`, `farm_is_erased`.
    """

    model = Agreement
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_agreements",
            "What was agreed with a farm",
            shows=AgreementShown,
            lists=True,
            orders={"newest": ("-valid_from", "-id"), "id": ("id",)},
        ),
        "post": Op(
            Action.KEEP_PRICES,
            "add_agreement",
            "Agree something with a farm",
            takes=AgreedWord,
            shows=AgreementShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> TenantQuerySet[Agreement]:
        rows: TenantQuerySet[Agreement] = Agreement.objects.within(self.scope)
        return rows.filter(farm=self._farm())

    def make(self, content: Said) -> Agreement:
        return save_agreement(farm=self._farm(), word=AgreementWord(**content))

    def address_of(self, row: Agreement) -> str:
        return f"/api/v1/agreements/{row.pk}/"

    def _farm(self) -> Farm:
        return self.fetch(Farm, self.kwargs["pk"])


class AgreementApi(RowApi[Agreement]):
    """Something that was agreed with a farm."""

    model = Agreement
    ops = {"get": Op(Action.SEE_MONEY, "read_agreement", "One agreement", shows=AgreementShown)}


class EndAgreementApi(StepApi[Agreement]):
    """Today it holds for the last time; one that has not begun is gone. Refused: `period_locked`."""

    model = Agreement
    ops = {"post": Op(Action.KEEP_PRICES, "end_agreement", "End an agreement", shows=EndedTold, repeats=True)}

    def act(self, row: Agreement, content: Said) -> object:
        return {"agreement": end_agreement(agreement=row, today=local_day(self.now, self.seat.business.zone))}
