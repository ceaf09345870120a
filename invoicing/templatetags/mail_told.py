"""What became of the mails with an invoice, on its own page."""

from django import template

from invoicing.models import Invoice
from invoicing.selectors.sending_rows import sendings_of

register = template.Library()


@register.inclusion_tag("invoicing/_mails_of.html")
def mails_of(invoice: Invoice) -> dict[str, object]:
    """The mails with that invoice and what became of each; nothing where none was sent. One query."""
    return {"rows": sendings_of(invoice)}
