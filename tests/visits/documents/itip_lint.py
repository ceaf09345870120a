"""RFC 5546's tables for REQUEST (3.2.2) and CANCEL (3.2.5), typed in from memory: how often each may stand."""

import re
from collections import Counter

ONE, SOME, AT_MOST_ONE, NONE = (1, 1), (1, None), (0, 1), (0, 0)
OF_EVENT = {
    "REQUEST": {
        "ATTENDEE": SOME, "DTSTAMP": ONE, "DTSTART": ONE, "ORGANIZER": ONE, "SUMMARY": ONE, "UID": ONE,
        "SEQUENCE": ONE, "DTEND": AT_MOST_ONE, "DURATION": AT_MOST_ONE, "STATUS": AT_MOST_ONE, "GEO": AT_MOST_ONE,
        "LOCATION": AT_MOST_ONE, "CLASS": AT_MOST_ONE, "TRANSP": AT_MOST_ONE, "DESCRIPTION": AT_MOST_ONE,
        "LAST-MODIFIED": AT_MOST_ONE, "REQUEST-STATUS": NONE, "RECURRENCE-ID": AT_MOST_ONE,
    },
    "CANCEL": {
        "DTSTAMP": ONE, "ORGANIZER": ONE, "UID": ONE, "SEQUENCE": ONE, "STATUS": ONE, "DTSTART": AT_MOST_ONE,
        "SUMMARY": AT_MOST_ONE, "REQUEST-STATUS": NONE, "RECURRENCE-ID": AT_MOST_ONE, "VALARM": NONE,
    },
}  # fmt: skip
STATUSES = {"REQUEST": {"TENTATIVE", "CONFIRMED"}, "CANCEL": {"CANCELLED"}}


def itip_faults(raw: bytes) -> list[str]:
    """Every breach of the tables, in words."""
    lines = [line for line in raw.decode().replace("\r\n ", "").split("\r\n") if line]
    names = [re.split("[;:]", line)[0] for line in lines]
    faults = [
        f"{names.count(name)} of {name}" for name in ("METHOD", "PRODID", "VERSION") if names.count(name) != 1
    ]
    methods = [line.removeprefix("METHOD:") for line in lines if line.startswith("METHOD:")]
    method = methods[0] if methods else ""
    if method not in OF_EVENT:
        return [*faults, f"method {method}"]
    if lines.count("BEGIN:VEVENT") != 1:
        faults.append("not just one event")
    inside = lines[lines.index("BEGIN:VEVENT") + 1 : lines.index("END:VEVENT")]
    counted = Counter(re.split("[;:]", line)[0] for line in inside)
    counted["VALARM"] = inside.count("BEGIN:VALARM")
    for name, (least, most) in OF_EVENT[method].items():
        if counted[name] < least or (most is not None and counted[name] > most):
            faults.append(f"{counted[name]} of {name}")
    if counted["DTEND"] and counted["DURATION"]:
        faults.append("both DTEND and DURATION")
    faults += [
        f"status {line}" for line in inside
        if line.startswith("STATUS:") and line.removeprefix("STATUS:") not in STATUSES[method]
    ]  # fmt: skip
    return faults
