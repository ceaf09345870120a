"""What a person writes down of a calendar of their own."""

from django import forms
from django.core.files.uploadedfile import UploadedFile

from trimops.kernel.file_kinds import CALENDARS
from trimops.web.file_field import NamedFileField
from visits.documents.busy_times import LARGEST
from visits.services.add_outside_calendar import CalendarWish


class OutsideCalendarForm(forms.Form):
    name = forms.CharField(label="What we call it", max_length=60, initial="My calendar")
    url = forms.CharField(
        label="Its secret address",
        max_length=500,
        required=False,
        widget=forms.URLInput(attrs={"autocomplete": "off"}),
        help_text="In your calendar’s settings, where it offers an address in iCal form (.ics). Read every hour.",
    )
    file = NamedFileField(
        endings=CALENDARS,
        label="Or a file of it (.ics)",
        required=False,
        help_text="Read once. Put the newer one here when something changes.",
        widget=forms.ClearableFileInput(attrs={"accept": ".ics,text/calendar"}),
    )
    only_whole_days = forms.BooleanField(
        label="Only whole days keep the van in; appointments by the hour do not", required=False
    )
    keeps_titles = forms.BooleanField(
        label="Show here what an entry is called (else only that I am busy)", required=False
    )

    def clean_file(self) -> "UploadedFile[bytes] | None":
        file: UploadedFile[bytes] | None = self.cleaned_data.get("file")
        if file and (file.size or 0) > LARGEST:
            raise forms.ValidationError("The file is larger than 2 MB: save only the months to come.")
        return file

    def wish(self) -> CalendarWish:
        """Once the form is valid."""
        data = self.cleaned_data
        file = data["file"].read() if data["file"] else None
        return CalendarWish(data["name"], data["url"], file, data["only_whole_days"], data["keeps_titles"])
