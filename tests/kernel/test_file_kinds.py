"""Whether a file is what its name says (ASVS 5.2.2)."""

import pytest

from trimops.kernel.file_kinds import CALENDARS, PICTURES, STATEMENTS, TABLES, ending_fault

CSV, ZIP, XML = b"number;tag\n1;2\n", b"PK\x03\x04\x14", b"\xef\xbb\xbf\n<?xml version='1.0'?><Document/>"
PNG, JPEG = b"\x89PNG\r\n\x1a\n\x00", b"\xff\xd8\xff\xe0\x00"


@pytest.mark.parametrize(
    ("name", "content", "endings"),
    [
        ("herd.csv", CSV, TABLES),
        ("Herd 2026.03.CSV", "Nummer;Stück\n".encode("utf-16"), TABLES),
        ("herd.txt", b"", TABLES),
        ("herd", ZIP, TABLES),
        ("herd.xlsx", ZIP, TABLES),
        ("statement.xml", XML, STATEMENTS),
        ("statement.xml", "<?xml version='1.0'?>".encode("utf-16"), STATEMENTS),
        ("statement.csv", CSV, STATEMENTS),
        ("logo.PNG", PNG, PICTURES),
        ("logo.jpeg", JPEG, PICTURES),
        ("me.ics", b"\xef\xbb\xbfBEGIN:VCALENDAR\r\n", CALENDARS),
    ],
)
def test_a_file_that_is_what_it_is_called_is_taken(name, content, endings):
    assert ending_fault(name, content, endings) == ""


@pytest.mark.parametrize(
    ("name", "content", "endings", "words"),
    [
        ("herd.csv", ZIP, TABLES, "not what the file holds"),
        ("herd.csv", b"%PDF-1.7", TABLES, "not what the file holds"),
        ("herd.txt", b"MZ\x90\x00", TABLES, "not what the file holds"),
        ("herd.xlsx", CSV, TABLES, "not what the file holds"),
        ("statement.xml", CSV, STATEMENTS, "not what the file holds"),
        ("statement.csv", JPEG, STATEMENTS, "not what the file holds"),
        ("logo.png", JPEG, PICTURES, "not what the file holds"),
        ("logo.png", b"<svg/>", PICTURES, "not what the file holds"),
        ("me.ics", XML, CALENDARS, "not what the file holds"),
        ("herd.exe", CSV, TABLES, "read here ends in .csv, .txt, .tsv, .xlsx"),
        ("herd.csv.", CSV, TABLES, "ends in “.”"),
        ("logo.gif", b"GIF89a", PICTURES, "ends in .png"),
    ],
)
def test_any_other_is_refused_with_what_to_do(name, content, endings, words):
    assert words in ending_fault(name, content, endings)
