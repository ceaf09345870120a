import re

from django import forms
from django.template.loader import render_to_string

from trimops.web.look_sample import SampleForm


class Weighed(forms.Form):
    length = forms.IntegerField(
        label="Toe length, mm",
        help_text="From the hairline.",
        widget=forms.NumberInput({"placeholder": "75"}),
    )
    seen_by = forms.CharField(label="Seen by", required=False)

    def clean(self):
        if self.cleaned_data.get("length") == 1:
            raise forms.ValidationError("Measure it again.")


def test_a_field_is_described_by_its_help_and_its_error():
    drawn = str(Weighed({"length": ""}))
    described = re.search(r'aria-describedby="([^"]+)"', drawn).group(1).split()
    assert described == ["id_length_helptext", "id_length_error"]
    assert all(f'id="{name}"' in drawn for name in described)


def test_a_wrong_form_starts_with_a_summary_that_leads_to_the_field():
    drawn = str(Weighed({"length": ""}))
    assert "one thing to mend" in drawn
    assert '<a href="#id_length">Toe length, mm</a>' in drawn
    assert drawn.index('role="alert"') < drawn.index('id="id_length"')


def test_what_is_wrong_with_the_whole_form_is_in_the_summary():
    assert "<li>Measure it again.</li>" in str(Weighed({"length": "1"}))


def test_a_form_not_yet_sent_has_no_summary():
    assert "mend" not in str(Weighed())


def test_fields_that_may_stay_empty_say_so_and_no_others():
    assert str(Weighed()).count("may stay empty") == 1


def test_no_grey_words_stand_inside_a_field():
    assert "placeholder" not in str(Weighed())


def test_a_group_of_choices_has_a_legend_and_a_place_to_go_to():
    drawn = str(SampleForm({"name": "x"}))
    assert re.search(r"<legend>Hygiene level</legend>", drawn)
    target = re.search(r'<a href="#([^"]+)">Hygiene level</a>', drawn).group(1)
    assert f'id="{target}"' in drawn


def test_a_single_field_can_be_drawn_with_the_summary_above():
    form = Weighed({"length": ""})
    page = render_to_string("web/forms/summary.html", {"form": form}) + form["length"].as_field_group()
    assert page.count("Fill this in.") == 2
