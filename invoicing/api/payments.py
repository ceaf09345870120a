"""Payments: the list, one more, one of them; set against invoices, taken back, paid back."""

from rest_framework import serializers

from farms.models import Farm
from invoicing.api.invoices import key_of
from invoicing.api.money import Why
from invoicing.api.payment_shown import (
    PaidBackWord,
    PaymentRow,
    PaymentShown,
    PaymentWord,
    SharesWord,
    shares_of,
)
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Payment
from invoicing.models.payment import PaymentQuerySet
from invoicing.selectors.payment_rows import PaymentFilter, payment_rows, with_rests
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.pay_back import MoneyBack, pay_back
from invoicing.services.take_back_payment import take_back_payment
from invoicing.services.use_rest import use_rest
from trimops.accounts.actions import Action
from trimops.api.asked import Words, YesOrNo
from trimops.api.fields import Day, OneOf
from trimops.api.kinds import RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said


class BecauseWord(serializers.Serializer):  # type: ignore[type-arg]
    """Why."""

    because = Why()


class PaymentsApi(RowsApi[Payment]):
    """Payments, the newest first, those taken back among them.

    Refused: `payment_refused`, `cannot_settle` (nothing of it is kept then), `period_locked`.
    """

    model = Payment
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_payments",
            "The payments",
            shows=PaymentRow,
            lists=True,
            filters={
                "farm": Filter(key_of(Farm), "farm_id"),
                "method": Filter(OneOf(PaymentMethod), "method"),
                "received_from": Filter(Day(), "received_on__gte"),
                "received_until": Filter(Day(), "received_on__lte"),
                "reference": Filter(Words(max_length=140, help_text="Part of it."), "reference__icontains"),
            },
            orders={"newest": ("-received_on", "-id"), "id": ("id",)},
            query={
                "is_taken_back": YesOrNo(),
                "has_rest": YesOrNo(help_text="Something of it is not used yet."),
            },
        ),
        "post": Op(
            Action.KEEP_MONEY,
            "note_payment",
            "Note a payment",
            takes=PaymentWord,
            shows=PaymentShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> PaymentQuerySet:
        rows = Payment.objects.within(self.scope)
        if (taken_back := self.asked.get("is_taken_back")) is not None:
            rows = rows.filter(taken_back_at__isnull=not taken_back)
        if (wanted := self.asked.get("has_rest")) is None:
            return rows
        rest = payment_rows(self.scope, PaymentFilter.WITH_REST).order_by().values("pk")
        return rows.filter(pk__in=rest) if wanted else rows.exclude(pk__in=rest)

    def items(self, page: list[Payment]) -> list[object]:
        for row in with_rests(self.scope, page):
            row.payment.__dict__["rest"] = row.rest
        return super().items(page)

    def make(self, content: Said) -> Payment:
        farm: Farm = content["farm"]
        money = MoneyReceived(
            farm=farm,
            received_on=content["received_on"],
            amount=content["amount"],
            currency=self.seat.business.currency,
            method=content["method"],
            shares=shares_of(content),
            reference=content["reference"],
            payer_name=content["payer_name"],
            note=content["note"],
        )
        return note_payment(money=money, at=self.now, by=self.seat.user)


class PaymentApi(RowApi[Payment]):
    """One payment with what it was set against."""

    model = Payment
    ops = {"get": Op(Action.SEE_MONEY, "read_payment", "One payment", shows=PaymentShown)}


class SetAgainstApi(StepApi[Payment]):
    """What is left of a payment is set against invoices, dated today.

    Refused: `cannot_settle`, `period_locked`.
    """

    model = Payment
    related = ("farm", "business")
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "set_payment_against",
            "Set a payment against invoices",
            takes=SharesWord,
            shows=PaymentShown,
            repeats=True,
        )
    }

    def act(self, row: Payment, content: Said) -> Payment:
        use_rest(payment=row, shares=shares_of(content), at=self.now, by=self.seat.user)
        return self.row()


class TakeBackApi(StepApi[Payment]):
    """A payment that was noted wrongly no longer counts; what it had settled is open again. Nothing is deleted.

    Refused: `cannot_take_back`, `period_locked`.
    """

    model = Payment
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "take_back_payment",
            "Take a payment back",
            takes=BecauseWord,
            shows=PaymentShown,
            repeats=True,
        )
    }

    def act(self, row: Payment, content: Said) -> Payment:
        return take_back_payment(payment=row, because=content["because"], at=self.now, by=self.seat.user)


class PayBackApi(StepApi[Payment]):
    """The rest of a payment goes back to the farm; the money that went is answered.

    Refused: `cannot_pay_back`.
    """

    model = Payment
    related = ("farm",)
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "pay_back_payment",
            "Pay the rest of a payment back",
            takes=PaidBackWord,
            shows=PaymentShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Payment, content: Said) -> Payment:
        money = MoneyBack(row, content["paid_on"], content["amount"], content["method"], content["note"])
        return pay_back(money=money, at=self.now, by=self.seat.user)
