"""What settles an invoice besides a payment: a credit note set off or paid back, a write-off; and undoing it."""

from rest_framework import serializers

from invoicing.api.invoice_shown import AllocationShown, InvoiceShown
from invoicing.api.money import Why, paid_amount
from invoicing.api.payment_shown import PaidBackWord, PaymentShown
from invoicing.api.payments import BecauseWord
from invoicing.models import Allocation, Invoice, Payment
from invoicing.services.pay_back import MoneyBack, pay_back
from invoicing.services.set_off_credit import set_off_credit
from invoicing.services.undo_set_off import undo_set_off
from invoicing.services.write_off import write_off
from trimops.accounts.actions import Action
from trimops.api.kinds import StepApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowField


class BillWriteOffWord(serializers.Serializer):  # type: ignore[type-arg]
    """How much, and why."""

    amount = paid_amount("Left out: all that is open.", required=False)
    reason = Why()


class SetOffWord(serializers.Serializer):  # type: ignore[type-arg]
    """Against which invoice, and how much."""

    invoice = RowField(Invoice)
    amount = paid_amount("Left out: as much as fits.", required=False)


class WriteOffApi(StepApi[Invoice]):
    """What will not be paid any more is written off, as of today. What it means for the tax is for the accountant.

    Refused: `cannot_write_off`, `period_locked`.
    """

    model = Invoice
    related = ("business",)
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "write_off_invoice",
            "Write an invoice off",
            takes=BillWriteOffWord,
            shows=AllocationShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> Allocation:
        amount, reason = content.get("amount"), content["reason"]
        return write_off(invoice=row, reason=reason, at=self.now, by=self.seat.user, amount=amount)


class SetOffApi(StepApi[Invoice]):
    """A credit note is set off against an open invoice of the same farm or payer.

    Refused: `cannot_set_off`.
    """

    model = Invoice
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "set_off_credit_note",
            "Set a credit note off",
            takes=SetOffWord,
            shows=AllocationShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> Allocation:
        return set_off_credit(
            credit_note=row,
            invoice=content["invoice"],
            at=self.now,
            by=self.seat.user,
            amount=content.get("amount"),
        )


class CreditPaidBackApi(StepApi[Invoice]):
    """What a credit note is good for goes back to the farm; the money that went is answered.

    Refused: `cannot_pay_back`.
    """

    model = Invoice
    related = ("farm", "business")
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "pay_back_credit_note",
            "Pay a credit note back",
            takes=PaidBackWord,
            shows=PaymentShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Invoice, content: Said) -> Payment:
        money = MoneyBack(row, content["paid_on"], content["amount"], content["method"], content["note"])
        return pay_back(money=money, at=self.now, by=self.seat.user)


class AllocationUndoneApi(StepApi[Allocation]):
    """One thing that was set against an invoice no longer counts; the invoice, open again by that much, is answered.

    Refused: `cannot_undo` (money that went out: take the payment back), `period_locked`.
    """

    model = Allocation
    related = ("invoice", "payment", "credit_note")
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "undo_allocation",
            "Undo what was set against an invoice",
            takes=BecauseWord,
            shows=InvoiceShown,
            repeats=True,
        )
    }

    def act(self, row: Allocation, content: Said) -> Invoice:
        undo_set_off(allocation=row, because=content["because"], at=self.now)
        return self.fetch(Invoice, row.invoice_id)
