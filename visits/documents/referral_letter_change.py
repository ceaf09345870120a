"""What a new version of a letter to the vet changes, in words; nothing where it would say the same."""

from collections.abc import Iterator
from dataclasses import fields

from visits.documents.referral_letter_content import LetterFoot, ReferralLetterContent

_OF_THE_PAPER = {"letterhead", "made_at", "version", "change_note", "reference", "feet"}
_NAMES = {
    "farm_name": "the farm's name",
    "cow": "her number",
    "visit_day": "the day",
    "trimmer": "who trimmed her",
    "addressed_to": "whom it is for",
    "of_cow": "what is known of her",
    "of_farm": "the farm's address",
    "walked": "how she walks",
    "whole_cow": "why the vet",
    "told": "who was told",
    "note": "the trimmer's note",
    "photos": "photos",
    "photos_left_out": "photos",
    "cautions": "cautions",
}
_FOOT_NAMES = {
    "why": "why the vet",
    "found": "lesion seen",
    "signs": "signs",
    "done": "what was done",
    "not_done": "what was not done",
    "block_on": "the block",
    "earlier": "what was seen earlier",
}


def letter_changes(before: ReferralLetterContent, after: ReferralLetterContent) -> tuple[str, ...]:
    """ "left hind: signs", "who was told": a piece for each part that differs."""
    names = [field.name for field in fields(after) if field.name not in _OF_THE_PAPER]
    other = [_NAMES[name] for name in names if getattr(before, name) != getattr(after, name)]
    return (*_feet(before.feet, after.feet), *dict.fromkeys(other))


def _feet(before: tuple[LetterFoot, ...], after: tuple[LetterFoot, ...]) -> Iterator[str]:
    old, new = ({foot.foot: foot for foot in feet} for feet in (before, after))
    for foot, told in new.items():
        if foot not in old:
            yield f"{foot.label} added"
        else:
            for name, words in _FOOT_NAMES.items():
                if getattr(old[foot], name) != getattr(told, name):
                    yield f"{foot.label}: {words}"
    yield from (f"{foot.label} taken out" for foot in old if foot not in new)
