"""Bookings on the account: what they may pay, matched, set aside."""

from rest_framework import serializers

from invoicing.api.bank_shown import AcceptedWord, BankEntryShown, MatchShown, MatchWord, with_proposals
from invoicing.api.money import several
from invoicing.api.payment_shown import PaymentShown, shares_of
from invoicing.api.payments import BecauseWord
from invoicing.models import BankEntry, Invoice, Payment
from invoicing.models.bank import BankEntryQuerySet
from invoicing.selectors.bank_view import entries_done, entries_gone_out, entries_to_match
from invoicing.selectors.match_view import match_rows
from invoicing.services.match_entries import Accepted, match_entries
from invoicing.services.match_entry import match_entry, match_entry_paid_back
from invoicing.services.set_aside_entry import bring_back_entry, set_aside_entry
from trimops.accounts.actions import Action
from trimops.api.fields import Day
from trimops.api.kinds import DoApi, RowApi, RowsApi, StepApi
from trimops.api.op import Filter, Op, Said
from trimops.api.rows import RowField

LOOKS = {"to_match": entries_to_match, "gone_out": entries_gone_out, "done": entries_done}
NEWEST = {"newest": ("-booked_on", "-id"), "id": ("id",)}
BOOKED = {
    "booked_from": Filter(Day(), "booked_on__gte"),
    "booked_until": Filter(Day(), "booked_on__lte"),
}


class PaidBackOf(serializers.Serializer):  # type: ignore[type-arg]
    """What it paid back: the rest of a payment, or a credit note. One of the two."""

    payment = RowField(Payment, required=False, allow_null=True)
    credit_note = RowField(Invoice, required=False, allow_null=True)

    def validate(self, attrs: Said) -> Said:
        if (attrs.get("payment") is None) == (attrs.get("credit_note") is None):
            raise serializers.ValidationError({"payment": "Name one of the two, and only one."})
        return attrs


class AcceptWord(serializers.Serializer):  # type: ignore[type-arg]
    """Proposals, as they were seen."""

    accepted = several(AcceptedWord, min_length=1, max_length=200)


class EntryRefused(serializers.Serializer):  # type: ignore[type-arg]
    """A booking that no longer fits, and why."""

    entry = serializers.IntegerField()
    why = serializers.CharField()


class AcceptedTold(serializers.Serializer):  # type: ignore[type-arg]
    """Payments that were booked, and what was refused."""

    payments = serializers.ListField(child=serializers.IntegerField())
    refused = EntryRefused(many=True)


class BankEntriesApi(RowsApi[BankEntry]):
    """Bookings on the account, the newest first."""

    model = BankEntry
    related = ("statement",)
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_bank_entries",
            "Bookings on the account",
            shows=BankEntryShown,
            lists=True,
            filters=BOOKED,
            orders=NEWEST,
            query={
                "show": serializers.ChoiceField(
                    list(LOOKS), help_text="Came in and is not matched; went out and is not looked at; done."
                )
            },
        )
    }

    def rows(self) -> BankEntryQuerySet:
        if look := self.asked.get("show"):
            return LOOKS[look](self.scope)
        rows: BankEntryQuerySet = BankEntry.objects.within(self.scope).select_related("statement")
        return rows


class ProposalsApi(RowsApi[BankEntry]):
    """Bookings that came in and are not matched yet, each with what it may pay. Nothing is booked by itself."""

    model = BankEntry
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_bank_proposals",
            "What bookings may pay",
            shows=MatchShown,
            lists=True,
            filters=BOOKED,
            orders=NEWEST,
        )
    }

    def rows(self) -> BankEntryQuerySet:
        return entries_to_match(self.scope)

    def items(self, page: list[BankEntry]) -> list[object]:
        return super().items([with_proposals(row) for row in match_rows(self.scope, page)])


class BankEntryApi(RowApi[BankEntry]):
    """One booking on the account, as the bank told it, and what became of it here."""

    model = BankEntry
    related = ("statement",)
    ops = {"get": Op(Action.SEE_MONEY, "read_bank_entry", "One booking", shows=BankEntryShown)}


class AcceptApi(DoApi):
    """Proposals are accepted as they were seen, each by itself: what no longer holds is told, the others are booked."""

    ops = {
        "post": Op(
            Action.KEEP_BANK,
            "accept_bank_proposals",
            "Accept proposals",
            takes=AcceptWord,
            shows=AcceptedTold,
            repeats=True,
        )
    }

    def act(self, content: Said) -> object:
        accepted = [Accepted(one["entry"], one["farm"], shares_of(one)) for one in content["accepted"]]
        booked, refused = match_entries(accepted=accepted, at=self.now, by=self.seat.user)
        return {
            "payments": [payment.pk for payment in booked],
            "refused": [{"entry": entry.pk, "why": why} for entry, why in refused],
        }


class EntryStep(StepApi[BankEntry]):
    """Something about one booking."""

    model = BankEntry
    related = ("statement",)


class MatchApi(EntryStep):
    """A booking that came in is noted as the farm's payment.

    Refused: `entry_is_done`, `cannot_settle`, `period_locked`.
    """

    ops = {
        "post": Op(
            Action.KEEP_BANK,
            "match_bank_entry",
            "Match a booking",
            takes=MatchWord,
            shows=PaymentShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: BankEntry, content: Said) -> Payment:
        told = {"farm": content["farm"], "shares": shares_of(content)}
        return match_entry(entry=row, **told, at=self.now, by=self.seat.user)


class EntryPaidBackApi(EntryStep):
    """A booking that went out paid back a payment's rest or a credit note.

    Refused: `entry_is_done`, `cannot_pay_back`.
    """

    ops = {
        "post": Op(
            Action.KEEP_BANK,
            "match_bank_entry_paid_back",
            "Match a booking as paid back",
            takes=PaidBackOf,
            shows=PaymentShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: BankEntry, content: Said) -> Payment:
        source: Payment | Invoice = content.get("payment") or content["credit_note"]
        return match_entry_paid_back(entry=row, of=source, at=self.now, by=self.seat.user)


class SetAsideApi(EntryStep):
    """A booking that pays no invoice is not asked about again. Refused: `entry_is_done`."""

    ops = {
        "post": Op(
            Action.KEEP_BANK,
            "set_bank_entry_aside",
            "Set a booking aside",
            takes=BecauseWord,
            shows=BankEntryShown,
            repeats=True,
        )
    }

    def act(self, row: BankEntry, content: Said) -> BankEntry:
        set_aside_entry(entry=row, because=content["because"], at=self.now)
        return self.row()


class BringBackApi(EntryStep):
    """A booking that was set aside is asked about again."""

    ops = {
        "post": Op(
            Action.KEEP_BANK,
            "bring_bank_entry_back",
            "Bring a booking back",
            shows=BankEntryShown,
            repeats=True,
        )
    }

    def act(self, row: BankEntry, content: Said) -> BankEntry:
        bring_back_entry(entry=row)
        return self.row()
