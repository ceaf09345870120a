"""One file put through its inlet: read, or refused by name; nothing else, and in time."""

import time
from dataclasses import dataclass

from tests.fuzz.inlets import Inlet

MOST_SECONDS = 5.0


@dataclass(frozen=True)
class Tried:
    """Whether it was read; processor seconds that it took."""

    is_read: bool
    seconds: float


def tried(inlet: Inlet, content: bytes) -> Tried:
    """AssertionError for what takes too long; any other fault of the reader comes through."""
    began = time.process_time()
    said = ""
    try:
        inlet.read(content)
    except inlet.says_no as no:
        said = str(no).strip() or "nothing"
    assert said != "nothing", "a refusal says what is wrong"
    took = time.process_time() - began
    assert took < MOST_SECONDS, f"{took:.1f} s"
    return Tried(not said, took)
