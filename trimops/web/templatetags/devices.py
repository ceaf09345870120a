"""With what somebody is signed in, in words."""

from django import template

register = template.Library()

# The first that is found counts: each browser names those that it is like after itself. From memory, no source.
BROWSERS = (
    ("Edg", "Edge"),
    ("OPR/", "Opera"),
    ("Firefox/", "Firefox"),
    ("Chrome/", "Chrome"),
    ("Safari/", "Safari"),
)
SYSTEMS = (
    *(("Android", "an Android phone"), ("iPhone", "an iPhone"), ("iPad", "an iPad"), ("Windows", "Windows")),
    *(("Mac OS X", "a Mac"), ("Linux", "Linux")),
)


@register.filter
def device(user_agent: str) -> str:
    """`Chrome on an Android phone`; what names none of those that we know is shown as it says of itself."""
    browser = next((words for sign, words in BROWSERS if sign in user_agent), "")
    system = next((words for sign, words in SYSTEMS if sign in user_agent), "")
    if browser and system:
        return f"{browser} on {system}"
    return browser or user_agent[:60] or "unknown"
