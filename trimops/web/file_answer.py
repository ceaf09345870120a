"""How a file to keep is answered."""

from typing import Final

from django.http import HttpResponse

WORKBOOK: Final = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


def file_answer(content: bytes, kind: str, name: str) -> HttpResponse:
    """A file of that media type, saved under `name` (letters, digits, . _ -)."""
    answer = HttpResponse(content, content_type=kind)
    answer["Content-Disposition"] = f'attachment; filename="{name}"'
    answer["Cache-Control"] = "private, no-store"
    return answer
