"""Which version of a row somebody read (RFC 9110, 8.8.3), and whether it is still that."""

import hashlib

from django.utils.http import parse_etags
from rest_framework.request import Request
from rest_framework.utils.encoders import JSONEncoder

from trimops.api.refusals import NeedsMatch, Stale


def etag_of(shown: object) -> str:
    """A strong tag of what is shown: 128 bits of SHA-256 of its JSON."""
    text = JSONEncoder(sort_keys=True, separators=(",", ":")).encode(shown)
    return f'"{hashlib.sha256(text.encode()).hexdigest()[:32]}"'


def is_known(request: Request, tag: str) -> bool:
    """Whether the asker has this version already (If-None-Match, compared weakly)."""
    given = parse_etags(request.headers.get("If-None-Match", ""))
    return "*" in given or tag in {each.removeprefix("W/") for each in given}


def require_match(request: Request, tag: str) -> None:
    """NeedsMatch (428) without If-Match, Stale (412) where it names another version."""
    header = request.headers.get("If-Match")
    if header is None:
        raise NeedsMatch(
            "Send the ETag of the version that you change as If-Match, or * for whichever it is."
        )
    given = parse_etags(header)
    if "*" not in given and tag not in given:
        raise Stale(
            "It was changed since you read it: read it again, look, and send your change with the new ETag."
        )
