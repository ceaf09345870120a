"""Taking one farm's words and place out of a stored document, so that it can still be read as what it was."""

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass

STAND_IN = "A farm whose data was erased"
ERASED = "an erased farm"


@dataclass(frozen=True)
class Blot:
    """What is taken out: texts that hold one of `words`, and the place of the site of that id.

    `place` (latitude, longitude) stands in for the farm's own, so that the document still has a place there.
    """

    site: str
    words: Collection[str]
    place: tuple[float, float]


def blotted(value: object, blot: Blot) -> object:
    """The same document without them; what holds none of them comes back equal."""
    if isinstance(value, str):
        return value if _is_code(value, blot) else blotted_text(value, blot)
    if isinstance(value, Mapping):
        parts = {str(blotted(name, blot)): blotted(part, blot) for name, part in value.items()}
        if value.get("id") == blot.site and "lat" in value and "lon" in value:
            parts["lat"], parts["lon"] = blot.place
        return parts
    if isinstance(value, list):
        return [blotted(part, blot) for part in value]
    return value


def blotted_text(text: str, blot: Blot) -> str:
    """A text that names the farm says nothing any more: what stands beside the name may tell it as well."""
    return STAND_IN if any(_alone(word).search(text) for word in blot.words) else text


def without_name(text: str, blot: Blot) -> str:
    """What was written of another farm keeps what else it says."""
    for word in blot.words:
        text = _alone(word).sub(ERASED, text)
    return text


def _alone(name: str) -> re.Pattern[str]:
    """The name by itself, in any case: where a farm is called Ash, nothing was "washed" there."""
    return re.compile(rf"(?<!\w){re.escape(name)}(?!\w)", re.IGNORECASE)


def _is_code(text: str, blot: Blot) -> bool:
    """A key or a code of the program: one word, no name as it is written. A farm may be called Start."""
    if " " in text:
        return False
    return "/" in text or not any(word in text and not word.islower() for word in blot.words)
