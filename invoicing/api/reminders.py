"""Reminders of overdue invoices: put forward, looked at, approved or dropped by a person."""

from django.http import HttpResponse
from rest_framework import serializers

from invoicing.api.invoices import key_of
from invoicing.api.mails import MailShown
from invoicing.api.money import CURRENCY, Kept, MoneyShown, Told
from invoicing.api.payments import BecauseWord
from invoicing.documents.reminder_pdf import reminder_pdf
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.paper_names import paper_name
from invoicing.domain.reminder_steps import ReminderState
from invoicing.models import Invoice, Reminder
from invoicing.selectors.interest_due import claim_of, claim_rules
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.reminder_content import reminder_content
from invoicing.services.decide_reminder import approve_reminder, drop_reminder
from invoicing.services.propose_reminders import propose_reminders
from trimops.accounts.actions import Action
from trimops.api.fields import OneOf
from trimops.api.kinds import DoApi, FileApi, RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said
from trimops.kernel.clock import local_day
from trimops.kernel.money import round_money
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer

PDF = "application/pdf"


class ReminderRow(Kept):
    """One step of reminding of one invoice. The figures are those of the day of approval; 0 before."""

    currency = serializers.CharField(source="invoice.currency", read_only=True, help_text=CURRENCY)
    open_amount = MoneyShown("invoice.currency")
    interest = MoneyShown("invoice.currency")
    fixed_sum = MoneyShown("invoice.currency")

    class Meta:
        model = Reminder
        fields = [
            *(
                "id",
                "invoice",
                "step",
                "state",
                "proposed_at",
                "decided_at",
                "dropped_because",
                "reckoned_on",
            ),
            *("currency", "open_amount", "interest", "fixed_sum", "working"),
        ]
        read_only_fields = fields


class ClaimShown(serializers.Serializer):  # type: ignore[type-arg]
    """What would be claimed today; `problem` says why no interest could be reckoned."""

    open_amount = MoneyShown("")
    interest = MoneyShown("")
    fixed_sum = MoneyShown("")
    problem = serializers.CharField()


class ReminderShown(ReminderRow):
    """One reminder, and what would be claimed by it today."""

    today = ClaimShown(read_only=True)

    class Meta:
        model = Reminder
        fields = [*ReminderRow.Meta.fields, "today"]
        read_only_fields = fields

    def to_representation(self, instance: Reminder) -> Told:  # type: ignore[override]
        scope, day = self.context["scope"], local_day(self.context["now"], self.context["seat"].business.zone)
        claim = claim_of(instance.invoice, day, claim_rules(scope, money_rules(scope)))
        left = round_money(instance.invoice.open_amount, minor_digits(instance.invoice.currency))
        # because: what it shows is reckoned here, for the day of the caller
        instance.__dict__["today"] = {
            "open_amount": left,
            "interest": claim.interest,
            "fixed_sum": claim.fixed_sum,
            "problem": claim.problem,
        }
        return super().to_representation(instance)


class ApprovedTold(serializers.Serializer):  # type: ignore[type-arg]
    """The reminder as it went, and its mails; none: no address is known, so print it."""

    reminder = ReminderRow()
    mails = MailShown(many=True)


class ProposedTold(serializers.Serializer):  # type: ignore[type-arg]
    """How many reminders are new."""

    new = serializers.IntegerField(min_value=0)


class RemindersApi(RowsApi[Reminder]):
    """Reminders, the newest first: to be looked at, approved, dropped."""

    model = Reminder
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_reminders",
            "The reminders",
            shows=ReminderRow,
            lists=True,
            filters={
                "state": Filter(OneOf(ReminderState), "state"),
                "invoice": Filter(key_of(Invoice), "invoice_id"),
            },
            orders={"newest": ("-proposed_at", "-id"), "id": ("id",)},
        )
    }

    def rows(self) -> TenantQuerySet[Reminder]:
        rows: TenantQuerySet[Reminder] = Reminder.objects.within(self.scope).select_related("invoice")
        return rows.defer("pdf")


class ReminderApi(RowApi[Reminder]):
    """One reminder, and what would be claimed by it today."""

    model = Reminder
    related = ("invoice",)
    ops = {"get": Op(Action.SEE_MONEY, "read_reminder", "One reminder", shows=ReminderShown)}


class ReminderFile(FileApi):
    """The paper: as it went out, or as it would today."""

    costs = {"get": Cost.PAPER}
    ops = {"get": Op(Action.SEE_MONEY, "read_reminder_pdf", "A reminder as PDF", media=PDF)}

    def file(self) -> HttpResponse:
        links = ("invoice__farm__payer", "invoice__business", "invoice__corrects")
        row = self.fetch(Reminder, self.kwargs["pk"], *links)
        name = f"reminder-{paper_name(row.invoice.number)}-{row.step}"
        if row.pdf:
            return pdf_answer(bytes(row.pdf), name)
        day = local_day(self.now, self.seat.business.zone)
        rules = claim_rules(self.scope, money_rules(self.scope))
        claim = claim_of(row.invoice, day, rules)
        return pdf_answer(reminder_pdf(reminder_content(row.invoice, row.step, day, claim, rules)), name)


class ProposeApi(DoApi):
    """The open invoices are looked through now, as every night: the step that is due of each is put forward."""

    ops = {
        "post": Op(
            Action.KEEP_MONEY, "propose_reminders", "Put reminders forward", shows=ProposedTold, repeats=True
        )
    }

    def act(self, content: Said) -> object:
        return {"new": propose_reminders(business=self.seat.business, at=self.now)}


class ApproveApi(StepApi[Reminder]):
    """A reminder goes out, with its figures as of today.

    Refused: `already_decided`, `paid_meanwhile`, `claim_not_reckoned`.
    """

    model = Reminder
    related = ("invoice", "business")
    ops = {
        "post": Op(
            Action.KEEP_MONEY, "approve_reminder", "Approve a reminder", shows=ApprovedTold, repeats=True
        )
    }

    def act(self, row: Reminder, content: Said) -> object:
        mails = approve_reminder(reminder=row, at=self.now, by=self.seat.user)
        return {"reminder": self.row(), "mails": mails}


class DropApi(StepApi[Reminder]):
    """This step does not go out, and why; the next comes when its time has passed.

    Refused: `already_decided`.
    """

    model = Reminder
    related = ("invoice",)
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "drop_reminder",
            "Drop a reminder",
            takes=BecauseWord,
            shows=ReminderRow,
            repeats=True,
        )
    }

    def act(self, row: Reminder, content: Said) -> Reminder:
        drop_reminder(reminder=row, because=content["because"], at=self.now, by=self.seat.user)
        return self.row()
