"""What farms are told by themselves: which messages, at which hours, in which words, and what went."""

from rest_framework import serializers

from farms.domain.told_by import LANGUAGES
from trimops.accounts.actions import Action
from trimops.api.fields import ClockTime, OneOf
from trimops.api.kinds import DoApi, RowApi, RowsApi, StepApi, ToldApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.messages.house_texts import PARTS, HouseText
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.text_template import check_text
from visits.models import MessageRules, MessageText, Visit, VisitMessage
from visits.selectors.messages.message_preview import message_preview
from visits.selectors.messages.rules_in_use import rules_of
from visits.selectors.messages.texts_in_use import texts_of
from visits.services.messages.save_message_rules import (
    RulesWord,
    locked_rules,
    save_message_rules,
    switch_message,
)
from visits.services.messages.save_message_text import TextWord, save_message_text

HOURS = ("quiet_from", "quiet_until", "tomorrow_at", "late_minutes")


class ToldShown(RowContent):
    """Somebody of a farm was told something of a visit: the hour that it named, the latest arrival that it gave, and
    where the message stands (null: it is not kept any more)."""

    contact = serializers.CharField(source="contact.name", allow_null=True, default=None)
    channel = serializers.CharField(source="outgoing.channel", allow_null=True, default=None)
    state = serializers.CharField(source="outgoing.state", allow_null=True, default=None)

    class Meta:
        model = VisitMessage
        fields = ["id", "visit", "contact", "kind", "hour", "latest", "made_at", "channel", "state"]


class ToldApiOfVisit(RowsApi[VisitMessage]):
    """What the farm of a visit was told by itself, oldest first."""

    model = VisitMessage
    related = ("contact", "outgoing")
    ops = {
        "get": Op(
            Action.SEE_DIARY,
            "list_visit_messages",
            "What the farm was told",
            shows=ToldShown,
            lists=True,
            orders={"made_at": ("made_at", "id")},
        )
    }

    def rows(self) -> TenantQuerySet[VisitMessage]:
        visit = self.fetch(Visit, self.kwargs["pk"])
        return super().rows().filter(visit=visit).exclude(contact=None, outgoing=None)


class MessageHoursWord(serializers.Serializer):  # type: ignore[type-arg]
    """Hours by the business's own clock, and from how many minutes on running late is told."""

    quiet_from = ClockTime(help_text="No messages from.")
    quiet_until = ClockTime(help_text="Messages again from.")
    tomorrow_at = ClockTime(help_text="Farms of tomorrow are told at.")
    late_minutes = serializers.IntegerField(min_value=5, max_value=180)


class MessageHoursShown(MessageHoursWord):
    """The same, and which kinds go by themselves."""

    switched_on = serializers.ListField(child=OneOf(MessageKind))


class MessageRulesApi(RowApi[MessageRules]):
    """When farms are told, and when they are left in peace. Refused: tomorrow told in the quiet of the night
    (message_rule_makes_no_sense)."""

    model = MessageRules
    ops = {
        "get": Op(Action.KEEP_MESSAGES, "read_message_rules", "When farms are told", shows=MessageHoursShown),
        "patch": Op(
            Action.KEEP_MESSAGES,
            "change_message_rules",
            "Change when farms are told",
            takes=MessageHoursWord,
            shows=MessageHoursShown,
            changes=True,
        ),
    }

    def row(self, *, is_locked: bool = False) -> MessageRules:
        business = self.seat.business
        return locked_rules(business) if is_locked else rules_of(business)

    def change(self, row: MessageRules, content: Said) -> MessageRules:
        word = RulesWord(**{name: content.get(name, getattr(row, name)) for name in HOURS})
        return save_message_rules(business=self.seat.business, word=word, at=self.now)


class SwitchWord(serializers.Serializer):  # type: ignore[type-arg]
    """Which kind, and whether it goes by itself from now on."""

    kind = OneOf(MessageKind)
    is_on = serializers.BooleanField()


class SwitchMessageApi(StepApi[MessageRules]):
    """A kind of message goes by itself from now on, or does not; what waits to go still goes. That a report is ready is
    told in any case."""

    model = MessageRules
    ops = {
        "post": Op(
            Action.KEEP_MESSAGES,
            "switch_message",
            "Switch a message on or off",
            takes=SwitchWord,
            shows=MessageHoursShown,
            repeats=True,
        )
    }

    def row(self) -> MessageRules:
        return rules_of(self.seat.business)

    def act(self, row: MessageRules, content: Said) -> MessageRules:
        kind, on = content["kind"], content["is_on"]
        return switch_message(business=self.seat.business, kind=kind, on=on, at=self.now)


class MessageTextWord(serializers.Serializer):  # type: ignore[type-arg]
    """A text with its places in braces; a part that is empty, or as the house has it, is the house's."""

    kind = OneOf(MessageKind)
    language = serializers.ChoiceField(list(LANGUAGES.items()))
    subject = serializers.CharField(max_length=200, allow_blank=True, default="")
    body = serializers.CharField(max_length=4000, allow_blank=True, default="")
    short = serializers.CharField(max_length=600, allow_blank=True, default="", help_text="The SMS.")


class MessageTextShown(MessageTextWord):
    """A text in use; `places` are the names that it may hold between braces."""

    places = serializers.ListField(child=serializers.CharField())


class MessageTextsShown(serializers.Serializer):  # type: ignore[type-arg]
    """Each kind in each language."""

    items = MessageTextShown(many=True)


class MessageTextsApi(ToldApi):
    """The texts in use, the business's own where it has written one, else the house's."""

    ops = {
        "get": Op(
            Action.KEEP_MESSAGES, "list_message_texts", "The texts of messages", shows=MessageTextsShown
        )
    }

    def told(self) -> Said:
        texts = texts_of(self.scope)
        return {
            "items": [
                _text(kind, language, texts.in_language(kind, language))
                for kind in MessageKind
                for language in LANGUAGES
            ]
        }


class SaveMessageTextApi(StepApi[MessageRules]):
    """The business's own words for one message in one language. Refused (text_makes_no_sense): a place in braces that
    this message does not have, or one that it cannot do without."""

    model = MessageRules
    ops = {
        "post": Op(
            Action.KEEP_MESSAGES,
            "write_message_text",
            "Write a text",
            takes=MessageTextWord,
            shows=MessageTextShown,
            repeats=True,
        )
    }

    def row(self) -> MessageRules:
        return rules_of(self.seat.business)

    def act(self, row: MessageRules, content: Said) -> Said:
        kind, language = content["kind"], content["language"]
        text = HouseText(content["subject"], content["body"], content["short"])
        save_message_text(business=self.seat.business, word=TextWord(kind, language, text))
        return _text(kind, language, texts_of(self.scope).in_language(kind, language))


class MessageLookShown(serializers.Serializer):  # type: ignore[type-arg]
    """The mail and the SMS as they would read. `sms` is null for a report, which goes by mail alone."""

    visit = serializers.IntegerField(
        allow_null=True,
        help_text="Id of the visit that it is tried on; null: none is booked, a farm is made up.",
    )
    subject = serializers.CharField(help_text="The subject of the mail.")
    body = serializers.CharField(help_text="The text of the mail.")
    sms = serializers.CharField(allow_null=True, help_text="The text of the SMS; null: there is none.")
    sms_parts = serializers.IntegerField(
        allow_null=True, help_text="As so many SMS it is charged; null: none."
    )
    foreign = serializers.CharField(help_text="Signs for which the SMS holds fewer letters; empty: none.")


class LookAtMessageApi(DoApi):
    """How a text would read on the next visit in the diary; nothing is kept and nothing goes out. A part that is empty
    is the house's. Refused (text_makes_no_sense) as writing it would be."""

    ops = {
        "post": Op(
            Action.KEEP_MESSAGES,
            "look_at_message",
            "Look at a text before it is written",
            takes=MessageTextWord,
            shows=MessageLookShown,
            repeats=True,
        )
    }

    def act(self, content: Said) -> Said:
        kind, language = content["kind"], content["language"]
        text = HouseText(content["subject"], content["body"], content["short"])
        for part in PARTS:
            check_text(text.part(part), kind.places, part, kind.needs(part))
        own = MessageText(kind=kind.value, language=language, **vars(text))
        texts = texts_of(self.scope).with_row(own)
        found = message_preview(self.seat.business, kind, language, texts, self.now)
        return {
            "visit": found.visit.pk if found.visit else None,
            "subject": found.mail.subject,
            "body": found.mail.body,
            "sms": found.sms.body if found.sms else None,
            "sms_parts": found.size.parts if found.size else None,
            "foreign": found.foreign,
        }


def _text(kind: MessageKind, language: str, text: HouseText) -> Said:
    said = {"subject": text.subject, "body": text.body, "short": text.short}
    return {"kind": kind, "language": language, **said, "places": kind.places}
