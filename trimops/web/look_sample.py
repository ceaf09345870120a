"""What the look page shows: invented farms, a form that was filled in wrongly, a page of a list."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal
from typing import Final

from django import forms
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render

START: Final = datetime(2027, 3, 2, 9, 30, tzinfo=UTC)


class SampleForm(forms.Form):
    """One field of every kind that pages use."""

    name = forms.CharField(label="Name of the farm", max_length=80)
    cows = forms.IntegerField(label="Cows in the herd", min_value=1, help_text="Milking and dry together.")
    next_due = forms.DateField(
        label="Next routine visit", required=False, widget=forms.DateInput(attrs={"type": "date"})
    )
    hygiene = forms.ChoiceField(
        label="Hygiene level",
        choices=[("1", "1, usual"), ("2", "2, digital dermatitis active"), ("3", "3, restriction known")],
        widget=forms.RadioSelect,
    )
    crush = forms.ChoiceField(label="Crush", choices=[("site", "On site"), ("brought", "We bring ours")])
    on_site = forms.MultipleChoiceField(
        label="On the yard",
        required=False,
        choices=[("power", "Power"), ("water", "Water"), ("light", "Light")],
        widget=forms.CheckboxSelectMultiple,
    )
    access = forms.CharField(label="How to get in", required=False, widget=forms.Textarea)
    tell = forms.BooleanField(label="Tell the farm by email", required=False)


class FindForm(forms.Form):
    """The one-field filter over a list."""

    q = forms.CharField(label="Farm or place", required=False)


def sample_visits() -> list[dict[str, object]]:
    """Four visits, one in each meaning."""
    rows = [
        ("Long Meadow", 0, "done", "Finished", 14, 100, "238.00"),
        ("Upper Fold", 180, "urgent", "2 lame cows", 21, 130, "352.50"),
        ("Nether Barrow Holding", 330, "due", "Under way", 16, 75, "260.00"),
        ("Sallow End", 420, "planned", "Confirmed", 12, 60, "198.00"),
    ]
    names = ("farm", "at", "kind", "state", "cows", "minutes", "price")
    return [
        dict(zip(names, (farm, START + timedelta(minutes=after), *rest, Decimal(price)), strict=True))
        for farm, after, *rest, price in rows
    ]


def look_page(request: HttpRequest) -> HttpResponse:
    """Every piece of the look on one page; routed only while developing."""
    sample = {
        "at": START,
        "end": START + timedelta(minutes=135),
        "amount": Decimal("1234.5"),
        "owed_back": Decimal("-48"),
        "visits": sample_visits(),
        "page": Paginator(range(70), 20).page(2),
        "form": SampleForm({"name": "Upper Fold", "cows": "0", "next_due": "soon", "hygiene": "2"}),
        "find": FindForm(),
    }
    return render(request, "web/look.html", {"sample": sample})
