"""Answers of addresses that are their own key."""

from typing import Final

NOT_KEPT: Final = {
    "Cache-Control": "private, no-store",
    "Referrer-Policy": "no-referrer",
    "X-Robots-Tag": "noindex, nofollow, noarchive",
}
"""The address is the key: it must not lie in a cache, nor be handed on to another site, nor be found by searching."""
