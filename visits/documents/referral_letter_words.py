"""The words of the letter to the vet."""

from collections.abc import Iterable
from dataclasses import dataclass

from trimops.paper.days import clock, day_long, day_plain, day_short_year
from visits.documents.referral_letter_content import LetterFoot, LetterPhoto, ReferralLetterContent
from visits.documents.sole_drawing import SoleMark, SoleView
from visits.documents.visit_report_cow_words import found_words

NO_DIAGNOSIS = (
    "This letter tells what was seen at the trim. It is no diagnosis and asks for no medicine: "
    "what is wrong with her and what she is given, the vet decides."
)
MOST_FEET_NAMED = 2
NOBODY_TOLD = "Not noted that the vet was told."


@dataclass(frozen=True)
class FootTold:
    """A foot of the letter: its drawing, and what is said of it as (name, words) in the order of reading."""

    heading: str
    sole: SoleView
    said: tuple[tuple[str, str], ...]


def letter_title(letter: ReferralLetterContent) -> str:
    """The answer first: "Cow 412, High Thornbeck: left hind foot for the vet"."""
    feet = [foot.foot.label for foot in letter.feet]
    if len(feet) > MOST_FEET_NAMED:
        what = f"{len(feet)} feet"
    else:
        what = f"{' and '.join(feet)} {'foot' if len(feet) == 1 else 'feet'}" if feet else "lameness"
    return f"Cow {letter.cow}, {letter.farm_name}: {what} for the vet"


def letter_facts(letter: ReferralLetterContent) -> str:
    """When she was seen and by whom."""
    return f"Seen at the trim on {day_long(letter.visit_day)} by {letter.trimmer}, {letter.letterhead.name}."


def foot_told(foot: LetterFoot) -> FootTold:
    """What is said of a foot; a name without words is left out."""
    marks = tuple(SoleMark(found.claw, found.zone, for_vet=True) for found in foot.found)
    said = (
        ("Why the vet", _sentences(foot.why)),
        ("Lesion seen", _sentences(f"{f.lesion}{f.rest}" for f in map(found_words, foot.found))),
        ("Signs", _sentences([", ".join(foot.signs)])),
        ("Done", _sentences([", ".join(foot.done) or "nothing was cut"])),
        ("Not done", _sentences(foot.not_done)),
        ("Earlier", _sentences(f"{day_short_year(e.day)}: {e.words}" for e in foot.earlier)),
    )
    view = SoleView(foot.foot, marks, foot.block_on)
    return FootTold(
        f"{foot.foot.label[:1].upper()}{foot.foot.label[1:]}", view, tuple(s for s in said if s[1])
    )


def photo_words(photo: LetterPhoto) -> str:
    """ "left hind, 1 December 2026, 10:20"."""
    where = f"{photo.foot.label}, " if photo.foot else ""
    return f"{where}{day_plain(photo.taken_at.date())}, {clock(photo.taken_at)}"


def letter_change(letter: ReferralLetterContent) -> str:
    """What a later version says of itself; empty for the first."""
    if letter.version == 1:
        return ""
    return (
        f"Version {letter.version}, in place of the one before. Changed: {letter.change_note or 'not said'}"
    )


def _sentences(pieces: Iterable[str]) -> str:
    """Each piece as a sentence of its own."""
    return " ".join(f"{piece[:1].upper()}{piece[1:].rstrip('.')}." for piece in pieces if piece)
