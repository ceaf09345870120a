"""Forms around the draft list: one act on it, and the rules of a farm. They parse; services write."""

from collections.abc import Iterator
from dataclasses import asdict, dataclass, fields
from typing import TypeVar

from django import forms
from django.db import models
from django.http import QueryDict

from farms.models import Cow
from trimops.kernel.errors import NotFound
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.seen_form import SeenForm
from visits.domain.draft_rule_sources import DRAFT_RULES, DraftRule
from visits.domain.draft_rules import MOST_DAYS, RULE_SETS, DraftRules
from visits.models import DraftChange, Visit
from visits.selectors.draft_rules_in_use import RulesInUse

M = TypeVar("M", bound=TenantModel)
MOST_COWS = 500
DAY_WORDS = {
    "score_counts": "A score counts for so many days",
    "dry_off_from": "Not nearer than, days before drying off",
    "dry_off_to": "Not further than, days before drying off",
    "heifer_from": "Not nearer than, days before calving",
    "heifer_to": "Not further than, days before calving",
    "milk_from": "From this day in milk",
    "milk_to": "To this day in milk",
    "trim_again_after": "After so many days without a trim",
    "calving_warning": "Warn under so many days before calving",
}


class DraftAct(models.TextChoices):
    STRIKE = "strike", "Strike"
    ADD = "add", "Add"
    BACK = "back", "Take back"
    COUNT = "count", "Count"


class DraftActForm(forms.Form):
    """One act on the list. A row of the list sends the cow's key, the field for adding her number."""

    all_may_stay_empty = True

    act = forms.ChoiceField(choices=DraftAct.choices, widget=forms.HiddenInput)
    cow = forms.IntegerField(required=False, widget=forms.HiddenInput)
    change = forms.IntegerField(required=False, widget=forms.HiddenInput)
    number = forms.CharField(
        label="Cow", required=False, max_length=40, help_text="Her number, or the end of her tag."
    )
    why = forms.CharField(label="Why", required=False, max_length=200)
    count = forms.IntegerField(label="Cows expected", required=False, min_value=1, max_value=MOST_COWS)

    def __init__(self, data: QueryDict | None = None, *, visit: Visit, count: int = 1) -> None:
        super().__init__(data, initial={"act": DraftAct.ADD.value, "count": count})
        self.visit = visit

    @property
    def is_count(self) -> bool:
        """How many cows a visit counts with is the business's to say; a farm strikes and adds."""
        return self.data.get("act") == DraftAct.COUNT

    def clean(self) -> None:
        super().clean()
        act = self.cleaned_data.get("act")
        if act in (DraftAct.STRIKE, DraftAct.ADD):
            self._find_cow()
            if not self.cleaned_data.get("why") and "why" not in self.errors:
                self.add_error("why", "Say why in a few words: it stands beside her number on the list.")
        if act == DraftAct.BACK:
            self.cleaned_data["change"] = self._row(
                DraftChange.objects.within(self.visit.scope).filter(visit=self.visit), "change"
            )
        if act == DraftAct.COUNT and not self.cleaned_data.get("count") and "count" not in self.errors:
            self.add_error("count", "Say how many cows.")

    def found_cow(self) -> Cow:
        """The cow that the act is about, once the form is valid."""
        found: Cow = self.cleaned_data["cow"]
        return found

    def found_change(self) -> DraftChange:
        """The change that is taken back, once the form is valid."""
        found: DraftChange = self.cleaned_data["change"]
        return found

    def _find_cow(self) -> None:
        cows = Cow.objects.within(self.visit.scope).filter(farm_id=self.visit.farm_id)
        if self.cleaned_data.get("cow") is not None:
            self.cleaned_data["cow"] = self._row(cows, "cow")
            return
        number = (self.cleaned_data.get("number") or "").strip()
        found = list(cows.on_farm().known_as(number)[:3]) if number else []
        exact = [cow for cow in found if cow.number.casefold() == number.casefold()]
        if len(exact or found) == 1:
            self.cleaned_data["cow"] = (exact or found)[0]
        elif not number:
            self.add_error("number", "Give the number of the cow.")
        elif found:
            self.add_error("number", f"More than one cow goes by {number}: give her whole tag.")
        else:
            self.add_error(
                "number", f"No cow here goes by {number}: mend it, or tell the trimmer to add her."
            )

    def _row(self, rows: TenantQuerySet[M], field: str) -> M:
        row: M | None = rows.filter(pk=self.cleaned_data.get(field) or 0).first()
        if row is None:
            raise NotFound("There is nothing at this address.")
        return row


@dataclass(frozen=True)
class RuleRow:
    """One rule of the page: what it says and where it comes from, what turns it off, and its days."""

    rule: DraftRule
    switch: forms.BoundField | None
    days: list[forms.BoundField]


class DraftRulesForm(SeenForm, forms.Form):
    """The farm's own days within its set; an empty day means that of the set."""

    all_may_stay_empty = True

    def __init__(self, data: QueryDict | None = None, *, using: RulesInUse) -> None:
        super().__init__(data)
        self.using = using
        usual = asdict(using.rule_set.rules)
        for name, value in asdict(using.rules).items():
            self.fields[name] = _switch(value) if isinstance(value, bool) else _days(name, value, usual[name])

    def rules(self) -> Iterator[RuleRow]:
        """In the order of need."""
        for rule in DRAFT_RULES:
            switch = self[rule.switch] if rule.switch else None
            yield RuleRow(rule, switch, [self[name] for name in rule.days])

    def own(self) -> dict[str, object]:
        """What was given, once the form is valid."""
        usual = self.using.rule_set.rules
        given = {item.name: self.cleaned_data.get(item.name) for item in fields(DraftRules)}
        return {name: getattr(usual, name) if value is None else value for name, value in given.items()}


def _switch(value: object) -> forms.Field:
    return forms.BooleanField(label="Go by this rule", required=False, initial=value)


def _days(name: str, value: int, usual: int) -> forms.Field:
    field = forms.IntegerField(label=DAY_WORDS[name], required=False, min_value=0, max_value=MOST_DAYS)
    field.help_text, field.initial = f"Usual: {usual}", value
    return field


class RuleSetForm(forms.Form):
    """Another set, with the days that are its own."""

    rule_set = forms.ChoiceField(choices=[(each.id, each.name) for each in RULE_SETS.values()])
