"""Plain text made safe for a paragraph: escaped, cleaned, with a stand-in face where letters are lacking."""

import unicodedata
from xml.sax.saxutils import escape

from trimops.paper.typefaces import BODY, runs_of

_SAME_LOOK = {0x202F: "\u00a0", 0x2009: "\u00a0", 0x2011: "-", 0x00AD: "", 0x2028: "\n", 0x2029: "\n"}


def clean(text: str) -> str:
    """Composed (NFC), without control characters; odd spaces and hyphens as their plain kin; breaks kept."""
    if text.isascii() and text.isprintable():
        return text
    plain = unicodedata.normalize("NFC", text.replace("\r\n", "\n").translate(_SAME_LOOK))
    return "".join(c for c in plain if c == "\n" or unicodedata.category(c) not in ("Cc", "Cs", "Cf"))


def markup(text: str, face: str = BODY) -> str:
    """`text` for reportlab's paragraph language: & < > stand for themselves, a line break breaks the line."""
    pieces = [
        escape(run) if name == face else f'<font name="{name}">{escape(run)}</font>'
        for name, run in runs_of(clean(text), face)
    ]
    return "".join(pieces).replace("\n", "<br/>")
