"""A browser that looks at what each answer says beside its content: who walks the addresses walks the headers too."""

import re
from typing import Any

from django.http import HttpResponseBase
from django.test import Client
from django.urls import reverse

NEEDED = {
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin|no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": ".*camera=\\(\\).*",
    "Content-Security-Policy": ".*default-src 'self'.*",
}
OF_NOBODY = ("crush_pack", "crush_manifest", "crush_worker", "api_description")
"""Nothing of anybody's stands in these; a cache between may keep them."""


class HeaderClient(Client):
    """Django's, and AssertionError for an answer without the headers that every one has."""

    def request(self, **request: Any) -> Any:
        answer: HttpResponseBase = super().request(**request)
        look_at_headers(answer, str(request.get("PATH_INFO", "")))
        return answer


def look_at_headers(answer: HttpResponseBase, path: str) -> None:
    """AssertionError for what is missing, is weaker, or lets a cache between keep what is somebody's."""
    for name, value in NEEDED.items():
        assert re.fullmatch(value, answer.headers.get(name, "")), (path, name, answer.headers.get(name))
    policy = answer.headers["Content-Security-Policy"]
    assert "unsafe" not in policy, (path, policy)
    kind = answer.headers.get("Content-Type", "")
    assert "charset=" in kind or not kind.startswith("text/"), (path, kind)
    said = answer.headers.get("Content-Disposition", "")
    is_bare = kind.startswith("image/") and "filename=" not in said
    assert not is_bare, (path, "a picture without a name of ours")
    kept = answer.headers.get("Cache-Control", "")
    is_closed = "private" in kept or "no-store" in kept or "no-cache" in kept
    assert is_closed or path in map(reverse, OF_NOBODY), (path, kept)
