"""What is said to a trimmer who is asked, and to those who are told that nothing was heard of one."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from visits.domain.lone_watch.emergency_numbers import emergency_number
from visits.domain.lone_watch.watch_cautions import NO_REPLACEMENT

RECENTLY = timedelta(minutes=15)
"""A phone that was heard so shortly ago has a network: its owner has not answered."""


@dataclass(frozen=True)
class Whereabouts:
    """The place of a visit. `country`: ISO 3166-1."""

    farm: str
    address: str
    latitude: str
    longitude: str
    access_notes: str
    phone: str
    country: str

    @property
    def geo(self) -> str:
        """RFC 5870: a phone opens its map by it."""
        return f"geo:{self.latitude},{self.longitude}"


@dataclass(frozen=True)
class Missed:
    """Who did not check in, where, and what was last known. Times aware; None: it never was."""

    trimmer: str
    trimmer_phone: str
    place: Whereabouts
    began_at: datetime
    expected_end: datetime
    asked_at: datetime | None
    heard_at: datetime | None
    last_cow_at: datetime | None
    is_by_plan: bool
    is_quiet_place: bool
    taken_by: str
    now: datetime
    zone: ZoneInfo


def clock_words(at: datetime, now: datetime, zone: ZoneInfo) -> str:
    """ "12:40", with the day where it is not that of `now`."""
    local = at.astimezone(zone)
    if local.date() == now.astimezone(zone).date():
        return f"{local:%H:%M}"
    return f"{local:%H:%M} on {local:%a} {local.day} {local:%b}"


def heard_words(missed: Missed) -> str:
    """Whether his phone has no network, as far as can be told, or he did not answer."""
    heard = missed.heard_at
    quiet = " This farm is known to have no network." if missed.is_quiet_place else ""
    if heard is None:
        return f"Nothing was heard of the phone at all. What is noted without a network is kept on it.{quiet}"
    at = clock_words(heard, missed.now, missed.zone)
    if missed.now - heard > RECENTLY:
        return (
            f"Nothing was heard of the phone since {at}: it may have no network, an empty battery, or be broken. "
            f"What is noted meanwhile is kept on it.{quiet}"
        )
    return f"The phone was in touch at {at}, but nobody checked in on it."


def story_lines(missed: Missed) -> list[str]:
    """Since when, until when, and what was last heard."""
    begun = "was to begin" if missed.is_by_plan else "began"
    lines = [
        f"The visit {begun} at {_clock(missed, missed.began_at)} and should have been over "
        f"by about {_clock(missed, missed.expected_end)}."
    ]
    if missed.is_by_plan:
        lines.append("Nobody has noted that it was begun.")
    if missed.last_cow_at is not None:
        lines.append(f"The last cow we know of was noted at {_clock(missed, missed.last_cow_at)}.")
    if missed.asked_at is not None:
        lines.append(f"{missed.trimmer} was asked at {_clock(missed, missed.asked_at)} and has not answered.")
    lines.append(heard_words(missed))
    if missed.taken_by:
        lines.append(f"{missed.taken_by} said they see to it, but nobody has said since that all is well.")
    return lines


def first_lines(missed: Missed) -> list[str]:
    """What to do first, in order."""
    ring_farm = (
        f"Ring the farm: {missed.place.phone}."
        if missed.place.phone
        else "Ring the farm, if you know its number."
    )
    own = missed.trimmer_phone
    ring = f"Ring {missed.trimmer}: {own}." if own else f"Ring {missed.trimmer} (no number is kept here)."
    number = emergency_number(missed.place.country)
    return [
        ring,
        f"{ring_farm} Ask them to look at the crush, and to keep clear of loose cows and running machines.",
        f"If somebody is hurt, or nobody can look: ring {number} and say the place below. Do not wait for us.",
    ]


def place_lines(place: Whereabouts) -> list[str]:
    """Where it is, as it can be read out on the telephone."""
    lines = [place.farm, *place.address.splitlines(), f"{place.latitude}, {place.longitude}", place.geo]
    return [*lines, *([f"Getting in: {place.access_notes}"] if place.access_notes else [])]


def ask_mail(missed: Missed, until: datetime, link: str) -> tuple[str, str]:
    """Subject and body of the question to the trimmer."""
    subject = f"Are you well? {missed.place.farm}"
    body = [
        f"{missed.trimmer}, your visit to {missed.place.farm} should be over. Are you well?",
        f"Answer by {_clock(missed, until)}, or the people on the watch's list are told:",
        link,
        "One tap is enough: “30 minutes more” or “finished”. The page at the crush asks the same.",
        NO_REPLACEMENT,
    ]
    return subject, "\n\n".join(body)


def ask_sms(missed: Missed, until: datetime, link: str) -> str:
    return f"Are you well at {missed.place.farm[:40]}? Answer by {_clock(missed, until)}: {link}"


def tell_mail(missed: Missed, link: str) -> tuple[str, str]:
    """Subject and body for somebody on the list."""
    subject = f"{missed.trimmer} did not check in at {missed.place.farm}: please look"
    steps = [f"{number}. {line}" for number, line in enumerate(first_lines(missed), 1)]
    parts = [
        f"{missed.trimmer} works alone at {missed.place.farm} today and did not check in.",
        "\n".join(["What to do first", *steps]),
        "\n".join(["Where", *place_lines(missed.place)]),
        "\n".join(["What is known", *story_lines(missed)]),
        f"Say here that you see to it, that all is well, or that you cannot:\n{link}",
        NO_REPLACEMENT,
    ]
    return subject, "\n\n".join(parts)


def tell_sms(missed: Missed, link: str) -> str:
    """Short: a long SMS comes in pieces, or not at all."""
    own = f" {missed.trimmer_phone}" if missed.trimmer_phone else ""
    farm = f", then the farm {missed.place.phone}" if missed.place.phone else ""
    number = emergency_number(missed.place.country)
    return (
        f"{missed.trimmer[:40]} did not check in at {missed.place.farm[:40]}. Ring them{own}{farm}. "
        f"Hurt: {number}. Where and what: {link}"
    )


def well_mail(trimmer: str, because: str) -> tuple[str, str]:
    """Subject and body for everybody who was told before; `because` is a whole sentence."""
    body = f"{because}\n\nIf you were about to look for {trimmer}: there is no need any more. Thank you."
    return f"All is well: {trimmer}", body


def try_mail(trimmer: str, business: str, link: str) -> tuple[str, str]:
    """Subject and body of a test: it must not be taken for the real thing at any point."""
    body = [
        f"This is a test of the lone-worker watch of {business}. Nobody is missing.",
        f"If {trimmer} ever does not check in at a farm, you are told like this, with the place and what to do first.",
        f"Please open this and press the button, so that we know it reached you:\n{link}",
        NO_REPLACEMENT,
    ]
    return "TEST, nobody is missing: lone-worker watch", "\n\n".join(body)


def try_sms(trimmer: str, link: str) -> str:
    return (
        f"TEST, nobody is missing. You are on the lone-worker list for {trimmer[:40]}. Please confirm: {link}"
    )


def _clock(missed: Missed, at: datetime) -> str:
    return clock_words(at, missed.now, missed.zone)
