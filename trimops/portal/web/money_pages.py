"""What the farm was invoiced."""

from datetime import timedelta

from django.core.paginator import Paginator
from django.db.models import Sum
from django.http import HttpRequest, HttpResponse

from invoicing.models import Invoice
from trimops.accounts.roles import FarmRight
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.portal.web.client_page import ClientPage
from trimops.web.pdf_answer import pdf_answer

PER_PAGE = 40
A_YEAR = timedelta(days=365)


class PortalMoneyPage(ClientPage):
    """Issued invoices, the newest first; a draft is not the farm's yet."""

    right = FarmRight.SEES_MONEY
    template = "portal/money.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        today = local_day(self.now, self.seat.business.zone)
        rows = Invoice.objects.within(self.scope).issued().order_by("-issued_on", "-id")
        lately = rows.filter(issued_on__gt=today - A_YEAR).order_by("currency").values("currency")
        return self.show(
            {
                "farm": self.farm(),
                "page": Paginator(rows, PER_PAGE).get_page(request.GET.get("page")),
                "lately": list(lately.annotate(gross=Sum("gross"))),
                "due": rows.filter(due_on__gte=today).order_by("due_on").first(),
                "today": today,
            }
        )


class PortalInvoicePaper(ClientPage):
    """The paper as it was issued."""

    right = FarmRight.SEES_MONEY

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        invoice = self.fetch_from(Invoice.objects.issued().select_related("papers"), pk)
        if invoice.papers is None:
            raise NotFound("There is nothing at this address.")
        return pdf_answer(bytes(invoice.papers.pdf), invoice.number)
