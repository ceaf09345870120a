"""The list of what several fields must mean together is what the code refuses (ASVS 2.1.2)."""

from tests.standards.asvs.write_rules import LIST, constraints, rules, written


def test_the_list_is_what_the_code_says():
    assert LIST.read_text(encoding="utf-8") == written(), "python -m tests.standards.asvs.write_rules"


def test_every_refusal_says_what_it_refuses():
    assert len(rules()) > 140
    assert [row for row in rules() if not row[1].endswith(".") or row[1] == "None"] == []


def test_the_tables_say_theirs():
    assert ("farms.FarmAccess", "one access per farm and person") in constraints()
