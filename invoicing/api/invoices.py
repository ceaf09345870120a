"""Invoices and credit notes: the list, and one of them. What changes a draft lies under drafts/."""

from rest_framework import serializers

from farms.models import Farm, Payer
from invoicing.api.invoice_shown import InvoiceRow, InvoiceShown
from invoicing.models import Invoice, InvoiceKind, InvoiceState
from invoicing.models.invoice import InvoiceQuerySet
from invoicing.selectors.invoice_rows import HEAVY, by_day
from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber, Words, YesOrNo
from trimops.api.fields import Day
from trimops.api.kinds import RowApi, RowsApi
from trimops.api.op import Filter, Op
from trimops.api.rows import MOST_ID
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope


def key_of(model: type[Farm | Payer | Invoice], help_text: str = "") -> WholeNumber:
    """A row by its id in a query; one that is not there finds nothing."""
    return WholeNumber(
        min_value=1, max_value=MOST_ID, help_text=help_text or f"Id of a {model.__name__.lower()}."
    )


FILTERS = {
    "state": Filter(serializers.ChoiceField(InvoiceState.choices), "state"),
    "kind": Filter(serializers.ChoiceField(InvoiceKind.choices), "kind"),
    "farm": Filter(key_of(Farm), "farm_id"),
    "payer": Filter(key_of(Payer), "payer_id"),
    "visit": Filter(WholeNumber(min_value=1, max_value=MOST_ID, help_text="The visit it bills."), "visit_id"),
    "corrects": Filter(key_of(Invoice, "Credit notes on that invoice."), "corrects_id"),
    "number": Filter(Words(max_length=40, help_text="Part of the number."), "number__icontains"),
    "issued_from": Filter(Day(), "issued_on__gte"),
    "issued_until": Filter(Day(), "issued_on__lte"),
    "is_open": Filter(YesOrNo(help_text="Something of it is not settled."), "is_open"),
}


class InvoicesApi(RowsApi[Invoice]):
    """Every invoice, credit note and draft. A farm client sees its own issued ones alone."""

    model = Invoice
    ops = {
        "get": Op(
            Action.SEE_OWN_BILLS,
            "list_invoices",
            "The invoices, the newest first",
            shows=InvoiceRow,
            lists=True,
            filters=FILTERS,
            orders={"newest": ("-day", "-id"), "id": ("id",)},
            query={"is_overdue": YesOrNo(help_text="Open invoices past the day they were due.")},
        )
    }

    def rows(self) -> InvoiceQuerySet:
        rows = by_day(Invoice.objects.within(self.scope)).defer(*HEAVY)
        rows = rows.issued() if self.scope.is_farm_client else rows
        if (wanted := self.asked.get("is_overdue")) is None:
            return rows
        late = rows.issued().bills().filter(is_open=True, due_on__lt=self._today())
        return late if wanted else rows.exclude(pk__in=late.order_by().values("pk"))

    def _today(self) -> object:
        return local_day(self.now, self.seat.business.zone)


class InvoiceApi(RowApi[Invoice]):
    """One invoice with its lines, its tax by rate, and what was set against it.

    A farm client is not told what was set against it, nor why a line is there; a draft is not there for it.
    """

    model = Invoice
    ops = {"get": Op(Action.SEE_OWN_BILLS, "read_invoice", "One invoice", shows=InvoiceShown)}

    def row(self, *, is_locked: bool = False) -> Invoice:
        return issued_if_client(self.fetch(Invoice, self.kwargs["pk"]), self.scope)


def issued_if_client(invoice: Invoice, scope: Scope) -> Invoice:
    """NotFound where a farm client asks for a draft: it is not the farm's yet."""
    if scope.is_farm_client and not invoice.is_issued:
        raise NotFound("There is nothing at this address.")
    return invoice
