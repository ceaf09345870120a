"""Lines of the log about who came in, who did not, and how ways in were changed: `trimops.security`.

Written whatever level the log has, so that an inquiry finds them. They hold numbers of people and network addresses,
never names, mail addresses, passwords, codes, tokens or keys.
"""

import logging
from typing import Final

from trimops.watch.doing import who_does_it

log: Final = logging.getLogger("trimops.security")

EVENTS: Final = {
    "sign_in": "somebody came in; `ways` says by what",
    "sign_in_failed": "a wrong password, or an address of nobody",
    "sign_in_held": "too many wrong passwords: not tried at all",
    "second_step_failed": "a wrong code or passkey",
    "sign_out": "somebody signed out",
    "sign_in_over": "a sign-in was too old, or silent too long",
    "signed_out_elsewhere": "one sign-in, or all of a person, ended from another place",
    "proof_given": "who changes how they get in showed once more that it is they",
    "way_in_changed": "password, app, passkey or paper codes set, changed or taken away",
    "token_made": "a program was given a token",
    "token_revoked": "a token ended before its day",
    "refused": "an answer 401, 403, 413 or 429",
    "input_refused": "what was sent cannot be read, or cannot be meant (400, 422)",
    "rule_refused": "a rule of the work said no (409)",
    "not_there": "somebody signed in asked for a row that is not theirs, or never was",
    "wrong_key": "an address whose key opens nothing",
    "form_refused": "a form without the mark of its page (CSRF)",
    "plain_http": "a program asked without HTTPS",
}
"""What is written, and when."""


def note_security(event: str, *, by: int | None = None, seen_from: str = "", **told: object) -> None:
    """One line; `by` is a person's key and `seen_from` an address where the request does not know them (better).

    KeyError for an event that is not of the list above.
    """
    doing = who_does_it()
    if event not in EVENTS:
        raise KeyError(event)
    line: dict[str, object] = {"event": event}
    if person := by if by is not None else doing.by:
        line["by"] = person
    if place := seen_from or doing.seen_from:
        line["seen_from"] = place
    log.info("security", extra={"told": {**line, **told}})
