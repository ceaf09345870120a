"""A form of a row knows which version of the row its reader saw, as If-Match does for programs."""

import hashlib
import json
from collections.abc import Mapping
from copy import copy
from functools import cached_property
from typing import TYPE_CHECKING

from django import forms

SEEN = "seen"

if TYPE_CHECKING:
    Mixed = forms.BaseForm
else:
    # because: the form that this is mixed into brings the base, and two would be in each other's way
    Mixed = object


class SeenForm(Mixed):
    """Mixed into the form of a row. Make it of a row that is locked, with the same `initial` for showing and sending.

    Where the row is another one by now the form is not valid: it says so, keeps what was typed, and taking it anew is
    the next press of the button. A form sent without `seen` was not shown by us and is taken as it is. A template that
    lays the fields out itself puts `{{ form.seen }}` among them.
    """

    is_stale = False

    def __init__(self, *args: object, **kwargs: object) -> None:
        """`is_new=True`: there is no row yet, so that nothing was seen of it."""
        is_new = kwargs.pop("is_new", False)
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        if not is_new:
            self.fields[SEEN] = forms.CharField(required=False, widget=forms.HiddenInput)

    @cached_property
    def version(self) -> str:
        """Of what all fields show first; asked for when the form that this is mixed into has made its own."""
        names = [name for name in self.fields if name != SEEN]
        return _version({name: self.get_initial_for_field(self.fields[name], name) for name in names})

    def get_initial_for_field(self, field: forms.Field, field_name: str) -> object:
        return self.version if field_name == SEEN else super().get_initial_for_field(field, field_name)

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
