"""The description of the API: made of the code, kept beside it, served from the file."""

import json
from functools import cache
from pathlib import Path
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.views import View
from drf_spectacular.drainage import GENERATOR_STATS
from drf_spectacular.generators import SchemaGenerator

DESCRIPTION = Path(__file__).with_name("openapi.json")


def make_description() -> dict[str, Any]:
    """The description as the code is now (OpenAPI 3.1)."""
    with GENERATOR_STATS.silence():
        maker: Any = SchemaGenerator
        made: dict[str, Any] = maker().get_schema(request=None, public=True)
    return made


def description_text() -> str:
    """The text of the file: an operation or a component a line, so that a change shows as one and is read as one."""
    made = make_description()
    paths = _block({path: _block(each, 2) for path, each in made["paths"].items()}, 1)
    parts = _block({name: _block(each, 2) for name, each in made["components"].items()}, 1)
    rest = {name: each for name, each in made.items() if name not in ("paths", "components")}
    return (
        _block({**{name: _line(each) for name, each in rest.items()}, "paths": paths, "components": parts})
        + "\n"
    )


def _line(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(", ", ": "))


def _block(members: dict[str, Any], depth: int = 0) -> str:
    told = [
        f"{_line(name)}: {each if isinstance(each, str) else _line(each)}" for name, each in members.items()
    ]
    inner = " " * (depth + 1)
    return "{\n" + ",\n".join(inner + each for each in told) + "\n" + " " * depth + "}"


@cache
def kept_description() -> str:
    """The text of the file that came with this release."""
    return DESCRIPTION.read_text(encoding="utf-8")


class DescriptionFile(View):
    """Open to all: it says what can be asked, not what is answered."""

    def get(self, request: HttpRequest) -> HttpResponse:
        return HttpResponse(kept_description(), content_type="application/json")
