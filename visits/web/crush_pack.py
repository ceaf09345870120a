"""All files of the crush page in one packet, as the phone fetches them: one question instead of a hundred.

A line of JSON, {"version", "files": [[address, kind, bytes], ...]}, then the files one after the other, gzip over all.
Packed as they lie here: there is no build step, and a page that is open shows the very modules of this repository.
"""

import gzip
import json
import re
from functools import lru_cache

from django.templatetags.static import static

from visits.web.crush_files import crush_files, file_of

KINDS = {
    ".js": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".svg": "image/svg+xml",
    ".woff2": "font/woff2",
}
# Comments that begin at the left margin and end a line: a fifth of the page's size. Their lines stay, so that a
# fault is reported at the line where it stands in the file.
LONG_COMMENT = re.compile(rb"^/\*.*?\*/$", re.MULTILINE | re.DOTALL)


@lru_cache(maxsize=2)
def crush_pack(version: str) -> bytes:
    """The packet, compressed; `version` is `crush_version()` now."""
    named = [(path, _lean(path)) for path in crush_files()]
    files = [[static(path), KINDS[file_of(path).suffix], len(content)] for path, content in named]
    head = json.dumps({"version": version, "files": files}).encode()
    return gzip.compress(head + b"\n" + b"".join(content for _, content in named), 9)


def _lean(path: str) -> bytes:
    content = file_of(path).read_bytes()
    if not path.endswith((".js", ".css")):
        return content
    return LONG_COMMENT.sub(lambda found: b"\n" * found[0].count(b"\n"), content)
