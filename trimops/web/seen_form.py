"""A form of a row knows which version of the row its reader saw, as If-Match does for programs."""

import hashlib
import json
from collections.abc import Mapping
from copy import copy
from typing import TYPE_CHECKING

from django import forms

SEEN = "seen"

if TYPE_CHECKING:
    Mixed = forms.BaseForm
else:
    # because: the form that this is mixed into brings the base, and two would be in each other's way
    Mixed = object


class SeenForm(Mixed):
    """Mixed into a ModelForm. Make it of a row that is locked, with the same `initial` for showing and for sending.

    Where the row is another one by now the form is not valid: it says so, keeps what was typed, and taking it anew is
    the next press of the button. A form sent without `seen` was not shown by us and is taken as it is.
    """

    is_stale = False

    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.version = _version(self.initial)
        self.fields[SEEN] = forms.CharField(required=False, widget=forms.HiddenInput)
        self.initial[SEEN] = self.version

    @property
    def refused_as(self) -> int:
        """The status of a page that shows it again: 409 where somebody else changed the row, else 400."""
        return 409 if self.is_stale else 400

    def clean(self) -> dict[str, object]:
        told: dict[str, object] = super().clean() or self.cleaned_data
        seen = told.pop(SEEN, "")
        if seen and seen != self.version:
            self._refuse()
        return told

    def _refuse(self) -> None:
        self.is_stale = True
        others = [str(self[name].label) for name in self.changed_data if name != SEEN]
        differs = f" Different from what it says now: {', '.join(others)}." if others else ""
        self.add_error(
            None,
            f"Somebody changed this while you had it open.{differs} What you typed is still here: "
            "look at it, and keep it once more if it is to stand.",
        )
        typed = copy(self.data)
        typed[self.add_prefix(SEEN)] = self.version  # type: ignore[index]
        self.data = typed


def _version(initial: Mapping[str, object]) -> str:
    """128 bits of SHA-256 of what the form shows first, in hex."""
    text = json.dumps(initial, sort_keys=True, default=str)
    return hashlib.sha256(text.encode()).hexdigest()[:32]
