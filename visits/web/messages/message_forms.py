"""Forms of the messages to farms. They parse; services write."""

from django import forms
from django.http import QueryDict

from farms.domain.told_by import LANGUAGES
from trimops.web.seen_form import SeenForm
from visits.domain.messages.house_texts import HouseText
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.text_template import TextMakesNoSense, check_text
from visits.models import MessageRules
from visits.services.messages.save_message_rules import RulesWord

CLOCK = {"type": "time"}


class MessageTextForm(SeenForm, forms.Form):
    """Subject, mail and SMS, each with places; an empty one is the house's."""

    all_may_stay_empty = True
    subject = forms.CharField(max_length=200, required=False)
    body = forms.CharField(
        label="Mail", max_length=4000, required=False, widget=forms.Textarea(attrs={"class": "tall"})
    )
    short = forms.CharField(label="SMS", max_length=600, required=False, widget=forms.Textarea)

    def __init__(self, *args: object, kind: MessageKind, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        self.kind = kind
        if kind is MessageKind.REPORT:
            del self.fields["short"]

    def clean(self) -> dict[str, object]:
        told: dict[str, object] = super().clean() or self.cleaned_data
        for part in list(told):
            try:
                check_text(str(told[part]), self.kind.places, part, self.kind.needs(part))
            except TextMakesNoSense as fault:
                self.add_error(part, fault.message)
        return told

    def text(self) -> HouseText:
        """What was written, once the form is valid."""
        return HouseText(*(self.cleaned_data.get(part, "") for part in ("subject", "body", "short")))


class LanguageForm(forms.Form):
    """In which language the text is."""

    language = forms.ChoiceField(choices=list(LANGUAGES.items()))


class MessageRulesForm(SeenForm, forms.Form):
    """Hours of the business's own clock."""

    tomorrow_at = forms.TimeField(
        label="Farms of tomorrow are told at", widget=forms.TimeInput(attrs=CLOCK, format="%H:%M")
    )
    late_minutes = forms.IntegerField(
        label="Running late is told from, minutes later than told", min_value=5, max_value=180
    )
    quiet_from = forms.TimeField(
        label="No messages from", widget=forms.TimeInput(attrs=CLOCK, format="%H:%M")
    )
    quiet_until = forms.TimeField(
        label="Messages again from", widget=forms.TimeInput(attrs=CLOCK, format="%H:%M")
    )

    @classmethod
    def of(cls, rules: MessageRules, data: QueryDict | None = None) -> "MessageRulesForm":
        """As it is kept, or what was sent of it."""
        names = ("tomorrow_at", "late_minutes", "quiet_from", "quiet_until")
        return cls(data, initial={name: getattr(rules, name) for name in names})

    def word(self) -> RulesWord:
        return RulesWord(**self.cleaned_data)
