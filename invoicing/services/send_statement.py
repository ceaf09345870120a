"""A farm's statement of account is drawn and put on its way."""

from collections.abc import Sequence
from datetime import date, datetime

from django.db import transaction

from farms.models import Farm
from invoicing.documents.statement_pdf import statement_pdf
from invoicing.domain.money_words import in_words
from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Sending
from invoicing.selectors.money_addresses import money_addresses
from invoicing.selectors.statement_content import statement_content
from invoicing.services.make_mail import MailPaper
from invoicing.services.queue_sending import NoAddress, queue_sending
from trimops.accounts.models import User


@transaction.atomic
def send_statement(*, farm: Farm, first: date, last: date, at: datetime, by: User) -> Sequence[Sending]:
    """One mail to each of the farm's money addresses, the PDF as drawn now. NoAddress when there is none."""
    addresses = money_addresses(farm)
    if not addresses:
        raise NoAddress(f"There is no address for money papers of {farm.name}: add one on the farm's page.")
    content = statement_content(farm.scope, farm, first, last, at)
    pdf = statement_pdf(content)
    days = f"{first:%-d %b %Y} to {last:%-d %b %Y}"
    owed = max(content.closing, content.closing * 0)
    body = (
        f"Here is the statement of account of {farm.name}, {days}.\n"
        f"To pay on that day: {in_words(owed, content.currency)}.\n\n"
        f"If something does not agree with your books, please tell us.\n{farm.business.name}"
    )
    name = f"statement-{first:%Y%m%d}-{last:%Y%m%d}.pdf"
    paper = MailPaper(SentPaper.STATEMENT, attachment=pdf, attachment_name=name)
    return [
        queue_sending(
            farm=farm,
            paper=paper,
            address=address,
            subject=f"Statement of account, {farm.name}, {days}",
            body=body,
            at=at,
            by=by,
        )
        for address in addresses
    ]
