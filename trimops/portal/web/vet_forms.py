"""What the farm says when it lets its vet in."""

from django import forms

from farms.services.give_vet_pass import MOST_DAYS, VetWord

SHOWS = [
    ("shows_letters", "Cows left to the vet, with the letters (a letter carries the photo of its foot)"),
    ("shows_reports", "Reports of visits"),
    ("shows_cows", "Every cow's feet over time"),
    ("shows_photos", "Photos of feet"),
    ("shows_figures", "The herd's feet over time"),
]


class VetPassForm(forms.Form):
    vet_name = forms.CharField(label="The vet", max_length=120, help_text="A person or a practice.")
    email = forms.EmailField(
        label="Email", required=False, help_text="The link is sent there; without it you hand it on yourself."
    )
    shows = forms.MultipleChoiceField(
        label="What the vet may see", choices=SHOWS, widget=forms.CheckboxSelectMultiple
    )
    days = forms.IntegerField(
        label="For how many days", min_value=1, max_value=MOST_DAYS, help_text="Then the link ends by itself."
    )

    def word(self) -> VetWord:
        said = self.cleaned_data
        return VetWord(said["vet_name"], said["email"], said["shows"], said["days"])
