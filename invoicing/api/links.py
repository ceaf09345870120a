"""Secret addresses that show one invoice to whoever holds them."""

from django.views.decorators.debug import sensitive_variables
from rest_framework import serializers
from rest_framework.response import Response

from invoicing.api.money import Kept
from invoicing.models import Invoice, InvoiceLink
from invoicing.services.close_invoice_link import close_invoice_link
from invoicing.services.make_invoice_link import make_invoice_link
from trimops.accounts.actions import Action
from trimops.api.kinds import RowsApi, StepApi
from trimops.api.op import Op, Said
from trimops.tenancy.querysets import TenantQuerySet


class LinkShown(Kept):
    """A link: until when it opens, and whether somebody opened it."""

    class Meta:
        model = InvoiceLink
        fields = ["id", "invoice", "made_at", "expires_at", "closed_at", "opened_at"]
        read_only_fields = fields


class NewLinkShown(LinkShown):
    """A link that was made."""

    address = serializers.URLField(
        read_only=True,
        allow_null=True,
        help_text="Told once, in the first answer; null to a call that is repeated: make another then.",
    )

    class Meta:
        model = InvoiceLink
        fields = [*LinkShown.Meta.fields, "address"]
        read_only_fields = fields


class LinksApi(RowsApi[InvoiceLink]):
    """Links that open one invoice for 90 days. A new one's address is told once and kept nowhere.

    Refused: `not_issued_yet`, `farm_is_erased`.
    """

    model = InvoiceLink
    cache_when_done = "no-store"
    ops = {
        "get": Op(Action.SEE_MONEY, "list_invoice_links", "Links to an invoice", shows=LinkShown, lists=True),
        "post": Op(
            Action.KEEP_MONEY,
            "make_invoice_link",
            "Make a link to an invoice",
            shows=NewLinkShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> TenantQuerySet[InvoiceLink]:
        invoice = self.fetch(Invoice, self.kwargs["pk"])
        rows: TenantQuerySet[InvoiceLink] = InvoiceLink.objects.within(self.scope).filter(invoice=invoice)
        return rows

    @sensitive_variables("made")
    def _add(self) -> Response:
        made = make_invoice_link(invoice=self.fetch(Invoice, self.kwargs["pk"], "farm"), at=self.now)
        self.tell_once(address=made.address)
        made.row.__dict__["address"] = None
        return Response(self.show(made.row), status=self.op.status)


class LinkClosedApi(StepApi[InvoiceLink]):
    """From now on the link opens nothing; closing it twice changes nothing."""

    model = InvoiceLink
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "close_invoice_link",
            "Close a link to an invoice",
            shows=LinkShown,
            repeats=True,
        )
    }

    def act(self, row: InvoiceLink, content: Said) -> InvoiceLink:
        return close_invoice_link(link=row, at=self.now)
