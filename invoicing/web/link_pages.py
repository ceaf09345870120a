"""One invoice by a secret link, for whoever was sent it: no account, no sign-in."""

from datetime import datetime

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import render
from django.utils import timezone
from django.views import View
from django.views.decorators.debug import sensitive_variables

from invoicing.domain.paper_names import paper_name
from invoicing.models import InvoiceLink, InvoicePapers
from invoicing.selectors.invoice_behind_link import invoice_behind_link, invoice_link_of
from invoicing.services.note_link_opened import note_link_opened
from invoicing.web.xml_answer import xml_answer
from trimops.kernel.clock import local_day
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from trimops.web.not_kept import NOT_KEPT
from trimops.web.pdf_answer import pdf_answer


class LinkPage(View):
    """Opens to whoever holds the secret of a link that is alive; an ended one and one that never was answer alike."""

    @sensitive_variables("secret", "kwargs")
    def dispatch(self, request: HttpRequest, *args: object, **kwargs: object) -> HttpResponseBase:
        self.secret = str(kwargs.pop("secret"))
        self.now: datetime = timezone.now()
        answer = self._answer(request, invoice_link_of(self.secret, self.now), kwargs)
        for name, value in NOT_KEPT.items():
            answer[name] = value
        return answer

    def _answer(
        self, request: HttpRequest, found: InvoiceLink | None, named: dict[str, object]
    ) -> HttpResponseBase:
        if found is None:
            return render(request, "invoicing/link_ended.html", status=404)
        self.link: InvoiceLink = found
        try:
            with timezone.override(found.business.zone):
                return super().dispatch(request, **named)
        except NotFound:
            return render(request, "invoicing/link_ended.html", status=404)

    def papers(self) -> InvoicePapers:
        rows = InvoicePapers.objects.within(Scope(self.link.business_id)).filter(invoice=self.link.invoice)
        found = rows.first()
        if found is None:
            raise NotFound("There is nothing at this address.")
        return found


class InvoiceByLinkPage(LinkPage):
    """What it is for, how much, how to pay, what is paid, whom to ring."""

    def get(self, request: HttpRequest) -> HttpResponse:
        note_link_opened(link=self.link, at=self.now)
        invoice, business = self.link.invoice, self.link.business
        rows = InvoicePapers.objects.within(Scope(business.pk)).filter(invoice=invoice)
        context = {
            "business": business,
            "secret": self.secret,
            "link": self.link,
            "invoice": invoice,
            "behind": invoice_behind_link(self.link, local_day(self.now, business.zone)),
            "has_xml": rows.exclude(ubl_sha256="").exists(),
        }
        return render(request, "invoicing/invoice_by_link.html", context)


class InvoiceByLinkPdf(LinkPage):
    def get(self, request: HttpRequest) -> HttpResponse:
        note_link_opened(link=self.link, at=self.now)
        return pdf_answer(bytes(self.papers().pdf), paper_name(self.link.invoice.number))


class InvoiceByLinkXml(LinkPage):
    def get(self, request: HttpRequest, form: str) -> HttpResponse:
        note_link_opened(link=self.link, at=self.now)
        return xml_answer(self.papers(), form, self.link.invoice.number)
