"""What to tell a farm whose hour has changed: a short plain text to be read, mended and sent by hand.

Addresses of the phone's own programs: `sms:` by RFC 5724, `mailto:` by RFC 6068. Nothing is sent from here.
"""

import re
from dataclasses import dataclass
from datetime import datetime
from urllib.parse import quote


@dataclass(frozen=True)
class HourNews:
    """One farm's visit: its hour before and now (aware, in the zone of the business), None where it has none.

    `because` ends the sentence "because ..."; empty gives no reason. `is_off` says that the visit is called off.
    """

    farm: str
    business: str
    before: datetime | None
    now: datetime | None
    greet: str = ""
    because: str = ""
    is_off: bool = False


def change_message(news: HourNews) -> str:
    """The text, in whole sentences; one paragraph, no more than a phone shows at once.

    ValueError where there is no hour on either side: then there is nothing to tell.
    """
    return " ".join(
        part for part in (f"Hello {news.greet}".strip() + ",", _news(news), _ask(news), _from(news)) if part
    )


def _news(news: HourNews) -> str:
    reason = f", because {news.because.rstrip('.')}" if news.because else ""
    if news.before is None and news.now is None:
        raise ValueError("no hour before and none now: nothing to tell")
    if news.now is None:
        old = _moment(news.before)
        if news.is_off:
            return f"the foot trimming at {news.farm} on {old} is called off{reason}."
        return f"we cannot come to {news.farm} on {old}{reason}. We are looking for another day and will ring you."
    new = _moment(news.now)
    if news.before is None:
        return f"we can come to {news.farm} for the foot trimming on {new}{reason}."
    if news.before.date() == news.now.date():
        word = "later" if news.now > news.before else "earlier"
        return (
            f"we shall be at {news.farm} {word} on {news.now:%A %-d %B}: "
            f"at {news.now:%H:%M} instead of {news.before:%H:%M}{reason}."
        )
    return f"we have to move the visit to {news.farm} from {_moment(news.before)} to {new}{reason}."


def _ask(news: HourNews) -> str:
    return "" if news.now is None else "Please tell us if that does not suit you."


def _from(news: HourNews) -> str:
    return f"{news.business}"


def _moment(at: datetime | None) -> str:
    return f"{at:%A %-d %B at %H:%M}" if at else ""


def sms_address(phone: str, text: str) -> str:
    """`sms:` with the number and the text; empty where there is no number to speak of."""
    number = re.sub(r"[^\d+]", "", phone)
    return f"sms:{number}?body={quote(text, safe='')}" if re.fullmatch(r"\+?\d{5,}", number) else ""


def mail_address(email: str, subject: str, text: str) -> str:
    """`mailto:` with subject and text; empty where there is no address."""
    if not email:
        return ""
    return f"mailto:{quote(email, safe='@')}?subject={quote(subject, safe='')}&body={quote(text, safe='')}"
