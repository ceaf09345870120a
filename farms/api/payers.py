"""Who pays for farms that do not pay themselves."""

from farms.models import Payer
from farms.services.save_payer import save_payer
from trimops.accounts.actions import Action
from trimops.api.asked import Words
from trimops.api.kinds import RowApi, RowsApi, set_fields
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import RowContent

TOLD = ["name", "address", "country", "email", "vat_number", "payment_days"]


class PayerWord(RowContent):
    """What may be said of a payer."""

    class Meta:
        model = Payer
        fields = TOLD


class PayerShown(RowContent):
    """A payer. `payment_days` null: as the business has it for all."""

    class Meta:
        model = Payer
        fields = ["id", *TOLD]


class PayersApi(RowsApi[Payer]):
    """The payers. Two of one name are refused. Which farms one pays for stands at the farms."""

    model = Payer
    ops = {
        "get": Op(
            Action.KEEP_PAYERS,
            "list_payers",
            "The payers",
            shows=PayerShown,
            lists=True,
            orders={"name": ("name",), "id": ("id",)},
            filters={"name": Filter(Words(max_length=120, help_text="Part of the name."), "name__icontains")},
        ),
        "post": Op(
            Action.KEEP_PAYERS,
            "add_payer",
            "One more payer",
            takes=PayerWord,
            shows=PayerShown,
            status=201,
            repeats=True,
        ),
    }

    def make(self, content: Said) -> Payer:
        payer = Payer(business=self.seat.business)
        set_fields(payer, content)
        return save_payer(payer=payer)


class PayerApi(RowApi[Payer]):
    """One payer. Invoices already issued keep the name and address they had."""

    model = Payer
    ops = {
        "get": Op(Action.KEEP_PAYERS, "read_payer", "One payer", shows=PayerShown),
        "patch": Op(
            Action.KEEP_PAYERS,
            "change_payer",
            "Change a payer",
            takes=PayerWord,
            shows=PayerShown,
            changes=True,
        ),
    }

    def change(self, row: Payer, content: Said) -> Payer:
        set_fields(row, content)
        return save_payer(payer=row)
