"""Forms of the watch: its minutes, and somebody on the list."""

from typing import TYPE_CHECKING

from django import forms
from django.http import QueryDict

from trimops.kernel.scope import Scope
from trimops.web.seen_form import SeenForm
from visits.models import Van, WatchContact
from visits.services.lone_watch.save_watch_rules import WatchWish

if TYPE_CHECKING:
    ContactModelForm = forms.ModelForm[WatchContact]
else:
    # Django's form classes take no type argument at run time.
    ContactModelForm = forms.ModelForm


def minutes(label: str, help_text: str) -> forms.IntegerField:
    return forms.IntegerField(label=label, min_value=5, max_value=240, help_text=help_text)


class WatchRulesForm(SeenForm, forms.Form):
    is_on = forms.BooleanField(label="Watch over whoever works alone", required=False)
    watches_plan = forms.BooleanField(
        label="Watch visits of the plan that nobody began, too",
        required=False,
        help_text="A phone without a network cannot say that it began. Without this nobody looks out then.",
    )
    grace_minutes = minutes(
        "Minutes after the visit should be over", "Then the trimmer is asked: are you well?"
    )
    answer_minutes = minutes("Minutes to answer", "Then the first on the list is told.")
    repeat_minutes = minutes("Minutes until the next", "Then the next on the list is told, and so on.")

    def wish(self) -> WatchWish:
        return WatchWish(**self.cleaned_data)


class WatchContactForm(SeenForm, ContactModelForm):
    class Meta:
        model = WatchContact
        fields = ("name", "phone", "email", "told_by", "van", "turn")
        labels = {
            "phone": "Mobile number",
            "email": "E-mail",
            "told_by": "Told by",
            "van": "For which van",
            "turn": "Turn",
        }
        help_texts = {"van": "", "turn": "1 is told first. Two with the same turn: the older entry first."}

    def __init__(self, data: QueryDict | None = None, *, instance: WatchContact, scope: Scope) -> None:
        super().__init__(data, instance=instance)
        vans = forms.ModelChoiceField(
            Van.objects.within(scope), label="For which van", required=False, empty_label="All vans"
        )
        vans.initial = instance.van_id
        self.fields["van"] = vans
