"""Every variable read from the environment stands in DEVELOPERS.md's table of settings, and none besides."""

import re

from tests.architecture.source_tree import ROOT

READ = re.compile(r"""os\.(?:environ\.get\(|environ\[|getenv\()\s*["']([A-Z][A-Z0-9_]*)["']""")
ROW = re.compile(r"^\|\s*`([A-Z][A-Z0-9_]*)`\s*\|")


def names_read() -> set[str]:
    files = (path for path in (ROOT / "trimops" / "settings").glob("*.py") if path.stem != "test")
    return {name for path in files for name in READ.findall(path.read_text())}


def names_in_table() -> set[str]:
    lines = (ROOT / "DEVELOPERS.md").read_text().splitlines()
    return {match[1] for line in lines if (match := ROW.match(line))}


def test_the_table_of_settings_is_what_the_settings_read():
    assert names_read() == names_in_table()


def test_settings_are_read_from_the_environment_only_in_settings():
    """One place to look: no other file of the product reads a variable of ours."""
    found = [
        str(path.relative_to(ROOT))
        for package in ("trimops", "farms", "visits", "invoicing")
        for path in (ROOT / package).rglob("*.py")
        if path.parent.name != "settings" and READ.search(path.read_text())
    ]
    assert not found


def test_both_ways_to_read_a_variable_are_seen():
    assert READ.findall("""os.environ.get("A_B", "1") os.environ['C']""") == ["A_B", "C"]
