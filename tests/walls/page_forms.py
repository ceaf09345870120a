"""The forms of a page as a browser finds them: where each is sent to, and what it sends."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser


@dataclass
class Choice:
    """One field whose values the page itself gives: hidden, chosen from a list, ticked or pressed."""

    name: str
    values: list[str] = field(default_factory=list)


@dataclass
class PageForm:
    """A form that is posted: its address ("" is the page's own), what is typed in it, and what it chooses from."""

    action: str
    typed: dict[str, str] = field(default_factory=dict)
    choices: dict[str, Choice] = field(default_factory=dict)

    def put(self, name: str, value: str) -> None:
        found = self.choices.setdefault(name, Choice(name))
        if value not in found.values:
            found.values.append(value)

    def sent(self) -> dict[str, str]:
        """What a browser sends where nobody touches it, but for what is ticked; the first of each choice."""
        first = {name: choice.values[0] for name, choice in self.choices.items()}
        return {**self.typed, **first}


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.forms: list[PageForm] = []
        self._form: PageForm | None = None
        self._select = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = {name: value or "" for name, value in attrs}
        if tag == "form":
            is_posted = told.get("method", "").lower() == "post"
            self._form = PageForm(told.get("action", "")) if is_posted else None
            self.forms += [self._form] if self._form else []
        elif self._form and tag in ("input", "button", "select", "textarea", "option"):
            self._read(self._form, tag, told)

    def _read(self, form: PageForm, tag: str, told: dict[str, str]) -> None:
        name = told.get("name", "")
        if tag == "select":
            self._select = name
        elif tag == "option":
            form.put(self._select, told.get("value", ""))
        elif name and (tag == "button" or told.get("type") in ("hidden", "radio", "checkbox")):
            form.put(name, told.get("value", ""))
        elif name:
            form.typed[name] = told.get("value", "")

    def handle_endtag(self, tag: str) -> None:
        if tag == "form":
            self._form = None


def page_forms(words: str) -> Iterator[PageForm]:
    """Of a whole page, in their order."""
    reader = _Reader()
    reader.feed(words)
    yield from reader.forms
