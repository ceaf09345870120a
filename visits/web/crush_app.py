"""The crush page itself: an app that the phone keeps. Its HTML holds no data and is the same for everybody."""

import gzip
import json

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import render
from django.templatetags.static import static
from django.urls import reverse
from django.utils.decorators import method_decorator
from django.views import View
from django.views.decorators.http import condition

from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.models import Visit
from visits.web.crush_files import SHELL, crush_files, crush_modules, crush_version
from visits.web.crush_pack import crush_pack

JAVASCRIPT = "text/javascript; charset=utf-8"
# As in trimops.css: paper and ink of the light theme.
PAPER = "#f7f6f0"


class CrushDaysPage(ScopedPage):
    """The days on this phone; where the installed app begins."""

    does = Action.WORK_AT_CRUSH
    template = SHELL

    def get(self, request: HttpRequest) -> HttpResponse:
        # The request is left out on purpose: nothing of it may get into a page that the phone keeps.
        return _asked_for_anew(render(None, self.template, {"modules": crush_modules()}))


class CrushPage(ScopedPage):
    """One visit. The page reads its number from the address."""

    does = Action.WORK_AT_CRUSH
    template = SHELL

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        self.fetch(Visit, pk)
        return _asked_for_anew(render(None, self.template, {"modules": crush_modules()}))


def _version_tag(request: HttpRequest) -> str:
    return f'"{crush_version()}"'


@method_decorator(condition(etag_func=_version_tag), name="dispatch")
class CrushWorker(View):
    """The service worker. Open to all: it names our own files and nothing else. Its scope is its folder, /visits/."""

    def get(self, request: HttpRequest) -> HttpResponse:
        context = {
            "version": crush_version(),
            "shell": reverse("crush_days"),
            "pack": reverse("crush_pack"),
            "files": json.dumps([static(path) for path in crush_files()]),
        }
        answer = render(request, "visits/crush_worker.js", context, content_type=JAVASCRIPT)
        return _asked_for_anew(answer)


@method_decorator(condition(etag_func=_version_tag), name="dispatch")
class CrushPack(View):
    """All our own files of the page in one answer; open to all as they are one by one."""

    def get(self, request: HttpRequest) -> HttpResponse:
        packed = crush_pack(crush_version())
        takes_gzip = "gzip" in request.headers.get("Accept-Encoding", "")
        answer = HttpResponse(
            packed if takes_gzip else gzip.decompress(packed), content_type="application/octet-stream"
        )
        if takes_gzip:
            answer["Content-Encoding"] = "gzip"
        answer["Vary"] = "Accept-Encoding"
        return _asked_for_anew(answer)


class CrushManifest(View):
    """What a phone needs to put the page among its apps (W3C Web Application Manifest)."""

    def get(self, request: HttpRequest) -> HttpResponse:
        manifest = {
            "name": "trimops at the crush",
            "short_name": "At the crush",
            "description": "Note every cow at the crush, with or without signal.",
            "lang": "en-GB",
            "id": reverse("crush_days"),
            "start_url": reverse("crush_days"),
            "scope": "/visits/",
            "display": "standalone",
            "background_color": PAPER,
            "theme_color": PAPER,
            "icons": [
                _icon("crush.svg", "any", "image/svg+xml", "any"),
                _icon("crush-maskable.svg", "any", "image/svg+xml", "maskable"),
                _icon("crush-192.png", "192x192", "image/png", "any"),
                _icon("crush-512.png", "512x512", "image/png", "any"),
                _icon("crush-maskable-512.png", "512x512", "image/png", "maskable"),
            ],
        }
        return _asked_for_anew(JsonResponse(manifest, content_type="application/manifest+json"))


def _icon(name: str, sizes: str, kind: str, purpose: str) -> dict[str, str]:
    return {"src": static(f"visits/crush/icons/{name}"), "sizes": sizes, "type": kind, "purpose": purpose}


def _asked_for_anew(answer: HttpResponse) -> HttpResponse:
    """Kept by the browser only as long as we say it is still the same."""
    answer["Cache-Control"] = "no-cache"
    return answer
