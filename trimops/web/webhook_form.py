"""What a person writes down of another program's web address."""

from django import forms

from trimops.outbox.domain.webhook_events import CHOOSABLE, WebhookEvent
from trimops.outbox.services.add_webhook import WebhookWish


class WebhookForm(forms.Form):
    name = forms.CharField(label="What we call it", max_length=80)
    url = forms.CharField(
        label="Its web address",
        max_length=400,
        widget=forms.URLInput(attrs={"autocomplete": "off"}),
        help_text="Begins with https://. The other program’s manual says which.",
    )
    events = forms.TypedMultipleChoiceField(
        label="It is told when",
        choices=[(event.value, event.label) for event in CHOOSABLE],
        coerce=WebhookEvent,
        widget=forms.CheckboxSelectMultiple,
        error_messages={"required": "Choose what it is told of."},
    )

    def wish(self) -> WebhookWish:
        """Once the form is valid."""
        data = self.cleaned_data
        return WebhookWish(data["name"], data["url"], data["events"])
