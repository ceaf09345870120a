"""How an e-invoice is answered."""

from django.http import HttpResponse

from invoicing.domain.paper_names import paper_name
from invoicing.models import InvoicePapers
from trimops.kernel.errors import NotFound


def xml_answer(papers: InvoicePapers, form: str, number: str) -> HttpResponse:
    """The kept bytes as a file to save; `form` is "ubl" or "cii". NotFound where there is none."""
    content = bytes({"ubl": papers.ubl, "cii": papers.cii}.get(form, b""))
    if not content:
        raise NotFound("There is nothing at this address.")
    answer = HttpResponse(content, content_type="application/xml")
    answer["Content-Disposition"] = f'attachment; filename="{paper_name(number)}-{form}.xml"'
    return answer
