"""Fingers: what a hand does on any page of the crush page, by touch, waiting for what the screen says to it."""

from collections.abc import Callable
from dataclasses import dataclass

from playwright.sync_api import Locator, Page, expect

PICTURE_MS = 30_000  # six million dots to be scaled, on a busy machine


@dataclass
class Fingers:
    """`photos` gives the bytes of the next picture. `page` is changed after the browser was killed."""

    page: Page
    photos: Callable[[], bytes]

    def press_here(self, button: Locator) -> None:
        if button.get_attribute("aria-pressed") != "true":
            self.tap(button)
        expect(button).to_have_attribute("aria-pressed", "true")

    def open_part(self, title: str) -> Locator:
        """A part that is folded away at first."""
        part = self.page.locator("details.more", has=self.page.locator("summary", has_text=title))
        if part.get_attribute("open") is None:
            self.tap(part.locator("summary").first)
        return part

    def write(self, field_: Locator, words: str) -> None:
        """Type on the phone's own keyboard, letter by letter, and leave the field."""
        self.tap(field_)
        field_.press_sequentially(words)
        field_.blur()
        expect(field_).to_have_value(words)

    def take_photo(self, part: Locator) -> None:
        before = part.locator("img").count()
        with self.page.expect_file_chooser() as chosen:
            self.tap(part.locator("label.photo-take"))
        picture = {"name": "taken.jpg", "mimeType": "image/jpeg", "buffer": self.photos()}
        chosen.value.set_files(picture)
        expect(part.locator("img")).to_have_count(before + 1, timeout=PICTURE_MS)

    def tap(self, target: Locator) -> None:
        target.tap()

    def button(self, name: str) -> Locator:
        return self.page.get_by_role("button", name=name, exact=True)
