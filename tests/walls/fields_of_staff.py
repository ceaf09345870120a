"""Which fields a farm client is not told (null), by address: what the walk of the API is held against, and
`python -m tests.walls.fields_of_staff` writes into DEVELOPERS.md.
"""

from pathlib import Path

from django.urls import reverse

from trimops.accounts.roles import FarmRight

PAGE = Path(__file__).parents[2] / "DEVELOPERS.md"
BEGIN = "<!-- written by python -m tests.walls.fields_of_staff -->\n"
END = "<!-- end of the fields -->\n"

ALWAYS: dict[str, set[str]] = {
    "api_farm": {"payer"},
    "api_visit": {"asked_by", "note", "called_off_because", "events.by", "events.note"},
    "api_held_hour": {"note", "moved_visit", "moved_van", "moved_start"},
    "api_report": {"mailed_to"},
    "api_invoice": {"lines.why", "lines.is_by_hand"},
}
"""Whatever rights the farm client has."""
WITH_A_RIGHT: dict[str, tuple[FarmRight, set[str]]] = {
    "api_farm": (FarmRight.HANDS_OVER, {"access_notes", "hygiene_reason", "vat_number"}),
    "api_visit": (FarmRight.READS_REPORTS, {"hygiene_note", "signed_by", "was_done", "farm_to_do"}),
}
"""Told to who has the right."""
LISTS = {
    "api_farm": "api_farms",
    "api_visit": "api_visits",
    "api_held_hour": "api_held_hours",
    "api_report": "api_reports",
}
"""The lists that show the same fields of many rows."""


def table() -> str:
    lines = ["| address | never told to a farm client | told with a right |", "|---|---|---|"]
    for name in ALWAYS:
        right, fields = WITH_A_RIGHT.get(name, ("", set()))
        told = f"{_words(fields)} with `{right}`" if fields else ""
        lines.append(f"| `{_address(name)}` | {_words(ALWAYS[name])} | {told} |")
    return "\n".join(lines) + "\n"


def _words(fields: set[str]) -> str:
    return ", ".join(f"`{field}`" for field in sorted(fields))


def _address(name: str) -> str:
    return reverse(name, kwargs={"pk": 1}).replace("/1/", "/…/")


def written(page: str) -> str:
    """What stands between the two marks."""
    return page.partition(BEGIN)[2].partition(END)[0]


if __name__ == "__main__":
    import os

    import django

    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "trimops.settings.test")
    django.setup()
    before, _, rest = PAGE.read_text().partition(BEGIN)
    PAGE.write_text(before + BEGIN + table() + END + rest.partition(END)[2])
