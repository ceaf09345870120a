"""Papers of the money that go by mail: the mail before it goes, sent, and what became of each."""

from django.db.models import F
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from farms.models import Farm
from invoicing.api.invoices import key_of
from invoicing.api.money import Kept
from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Invoice, Sending
from invoicing.selectors.invoice_mail import invoice_mail
from invoicing.selectors.sending_rows import BLOBS
from invoicing.services.make_invoice_link import NotIssuedYet
from invoicing.services.send_invoice import send_invoice
from trimops.accounts.actions import Action
from trimops.api.fields import Moment, OneOf
from trimops.api.kinds import RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.tenancy.querysets import TenantQuerySet

MAIL_ROWS = ("farm__payer", "business", "corrects")
TEXT = 5000


class MailShown(Kept):
    """One mail with a paper. `state` says whether the mail server took it, `last_words` what it said."""

    address = serializers.EmailField(source="outgoing.address", read_only=True)
    subject = serializers.CharField(source="outgoing.subject", read_only=True)
    state = OneOf(OutgoingState, source="outgoing.state", read_only=True)
    written_at = Moment(source="outgoing.written_at", read_only=True)
    went_at = Moment(source="outgoing.went_at", read_only=True, allow_null=True)
    last_words = serializers.CharField(source="outgoing.last_words", read_only=True)

    class Meta:
        model = Sending
        fields = [
            *("id", "paper", "farm", "invoice", "reminder", "with_xml", "with_link", "address", "subject"),
            *("state", "written_at", "went_at", "last_words"),
        ]
        read_only_fields = fields


class MailsTold(serializers.Serializer):  # type: ignore[type-arg]
    """The mails, one for each address."""

    mails = MailShown(many=True)


class MailDraft(serializers.Serializer):  # type: ignore[type-arg]
    """The mail as it would go by itself."""

    addresses = serializers.ListField(child=serializers.CharField(), help_text="Those put down for the farm.")
    subject = serializers.CharField()
    body = serializers.CharField()
    with_xml = serializers.BooleanField()
    no_xml_because = serializers.CharField(help_text="Why the XML cannot be added; empty: it can.")


class MailWord(serializers.Serializer):  # type: ignore[type-arg]
    """What is left out goes as the mail would go by itself."""

    addresses = serializers.ListField(
        child=serializers.EmailField(max_length=254), required=False, min_length=1, max_length=20
    )
    subject = serializers.CharField(required=False, max_length=200)
    body = serializers.CharField(required=False, max_length=TEXT)
    with_xml = serializers.BooleanField(
        required=False,
        allow_null=True,
        help_text="The e-invoice (UBL) as a file of its own; null: as agreed.",
    )
    with_link = serializers.BooleanField(
        default=True, help_text="A secret address at the end that opens the invoice for 90 days."
    )


class SendInvoiceApi(StepApi[Invoice]):
    """An issued invoice goes out, one mail for each address; a second call finds the mails of the first.

    GET shows the mail as it would go. Refused: `not_issued_yet`, `no_address`, `address_makes_no_sense`,
    `farm_is_erased`.
    """

    model = Invoice
    related = MAIL_ROWS
    also_refuses = (409,)
    ops = {
        "get": Op(Action.SEE_MONEY, "read_invoice_mail", "The mail before it goes", shows=MailDraft),
        "post": Op(
            Action.KEEP_MONEY,
            "send_invoice",
            "Send an invoice",
            takes=MailWord,
            shows=MailsTold,
            repeats=True,
        ),
    }

    def get(self, request: Request, **kwargs: object) -> Response:
        invoice = self.row()
        if not invoice.is_issued:
            raise NotIssuedYet("This is a draft still: issue it first, then send it.")
        return self.answer(self.show(invoice_mail(invoice)))

    def act(self, row: Invoice, content: Said) -> object:
        queued = send_invoice(
            invoice=row,
            at=self.now,
            by=self.seat.user,
            addresses=content.get("addresses"),
            with_xml=content.get("with_xml"),
            subject=content.get("subject", ""),
            body=content.get("body", ""),
            with_link=content["with_link"],
        )
        return {"mails": queued}


class MailsApi(RowsApi[Sending]):
    """Mails with papers of the money, the newest first. To try one again, or leave it, see what leaves the house."""

    model = Sending
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_money_mails",
            "Mails with papers of the money",
            shows=MailShown,
            lists=True,
            filters={
                "paper": Filter(OneOf(SentPaper), "paper"),
                "farm": Filter(key_of(Farm), "farm_id"),
                "invoice": Filter(key_of(Invoice), "invoice_id"),
                "state": Filter(OneOf(OutgoingState), "outgoing__state"),
            },
            orders={"newest": ("-written_at", "-id"), "id": ("id",)},
        )
    }

    def rows(self) -> TenantQuerySet[Sending]:
        rows: TenantQuerySet[Sending] = Sending.objects.within(self.scope).select_related("outgoing")
        return rows.defer(*BLOBS).annotate(written_at=F("outgoing__written_at"))


class MailApi(RowApi[Sending]):
    """One mail with a paper of the money."""

    model = Sending
    related = ("outgoing",)
    ops = {"get": Op(Action.SEE_MONEY, "read_money_mail", "One mail", shows=MailShown)}
