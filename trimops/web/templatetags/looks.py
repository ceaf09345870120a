"""Small pieces of every page: marks of meaning and text that is used twice."""

from typing import Final

from django import template
from django.utils.html import format_html
from django.utils.safestring import SafeString, mark_safe

register = template.Library()

WORDS: Final = {
    "done": "Done",
    "due": "Due",
    "urgent": "Urgent",
    "planned": "Planned",
    "plain": "Noted",
}


@register.simple_tag
def mark(kind: str, word: str = "") -> SafeString:
    """A shape, a hue and a word for one of the four meanings (or `plain`, which means none of them).

    `kind`: done, due, urgent (also: for the vet), planned, plain. Anything else raises ValueError, because a
    mark without a meaning would be a coloured ornament.
    """
    if kind not in WORDS:
        raise ValueError(f"no mark is called {kind!r}; there are {', '.join(WORDS)}")
    return format_html('<span class="mark mark-{}">{}</span>', kind, word or WORDS[kind])


@register.simple_block_tag
def keep(content: str) -> SafeString:
    """The block's text without the white space around it; `{% keep as name %}` lets a page show it twice."""
    return mark_safe(content.strip())  # because: the block was rendered, and so escaped, by the template


@register.filter
def message_kind(tags: str) -> str:
    """Which mark a message of Django's framework wears: success, warning and error have one, the rest none."""
    for tag, kind in (("error", "urgent"), ("warning", "due"), ("success", "done")):
        if tag in tags.split():
            return kind
    return "plain"


@register.filter
def message_word(tags: str) -> str:
    """The word beside that mark."""
    return {"urgent": "Stopped", "due": "Take note", "done": "Done", "plain": "Note"}[message_kind(tags)]
