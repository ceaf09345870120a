"""How a PDF is answered."""

from django.http import HttpResponse


def pdf_answer(content: bytes, name: str) -> HttpResponse:
    """A PDF shown in the browser, saved under `name`."""
    answer = HttpResponse(content, content_type="application/pdf")
    answer["Content-Disposition"] = f'inline; filename="{name}.pdf"'
    return answer
