"""What the office chooses and writes before an invoice goes out."""

from collections.abc import Iterable

from django import forms
from django.core.exceptions import ValidationError
from django.core.validators import validate_email
from django.http import QueryDict

from invoicing.selectors.invoice_mail import InvoiceMail


class SendForm(forms.Form):
    """The addresses put down for the farm, ticked; another; subject and text; what goes along."""

    all_may_stay_empty = True  # either of the first two may; said by what is wrong, not beside each field
    addresses = forms.MultipleChoiceField(
        label="To", required=False, widget=forms.CheckboxSelectMultiple, choices=[]
    )
    others = forms.CharField(
        label="Other addresses", required=False, max_length=500, help_text="With a comma between them."
    )
    subject = forms.CharField(label="Subject", max_length=200)
    body = forms.CharField(label="Text", max_length=5000, widget=forms.Textarea(attrs={"class": "tall"}))
    with_link = forms.BooleanField(
        label="A link that opens the invoice, at the end of the text",
        required=False,
        help_text="It shows what is paid, and ends after 90 days.",
    )
    with_xml = forms.BooleanField(
        label="The e-invoice as a file of its own (XML, UBL)",
        required=False,
        help_text="As CII it is inside the PDF already; some buyers want the UBL.",
    )

    def __init__(self, data: QueryDict | None = None, *, mail: InvoiceMail) -> None:
        first = {
            "addresses": mail.addresses,
            "subject": mail.subject,
            "body": mail.body,
            "with_link": True,
            "with_xml": mail.with_xml,
        }
        super().__init__(data, initial=first)
        self.mail = mail
        known = [(address, address) for address in mail.addresses]
        self.fields["addresses"].choices = known  # type: ignore[attr-defined]
        if not known:
            del self.fields["addresses"]
            self.fields["others"].label = "To"
            self.fields["others"].required = True
        if mail.no_xml_because:
            del self.fields["with_xml"]

    def clean_others(self) -> str:
        """The addresses written, with a comma between them."""
        written = _parted(self.cleaned_data["others"])
        wrong = [address for address in written if not _is_address(address)]
        if wrong:
            raise ValidationError(f"{_quoted(wrong)} is no e-mail address: mend it or take it out.")
        return ", ".join(written)

    def clean(self) -> None:
        super().clean()
        if "addresses" in self.fields and not self.errors and not self.to():
            self.add_error("addresses", "Tick an address, or write one below.")

    def to(self) -> list[str]:
        """Every address ticked or written."""
        return [*self.cleaned_data.get("addresses", []), *_parted(self.cleaned_data.get("others", ""))]


def _parted(written: str) -> list[str]:
    return [address.strip() for address in written.replace(";", ",").split(",") if address.strip()]


def _is_address(text: str) -> bool:
    try:
        validate_email(text)
    except ValidationError:
        return False
    return True


def _quoted(words: Iterable[str]) -> str:
    return ", ".join(f"“{word}”" for word in words)
