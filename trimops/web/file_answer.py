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


def picture_answer(content: bytes, kind: str = "image/jpeg") -> HttpResponse:
    """A picture shown where it is asked for; saved, it has a name of ours, not its address."""
    answer = HttpResponse(content, content_type=kind)
    answer["Content-Disposition"] = f'inline; filename="picture.{kind.rpartition("/")[2]}"'
    return answer
