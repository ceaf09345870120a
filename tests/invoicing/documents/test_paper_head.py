from invoicing.documents.invoice_content import Party
from invoicing.documents.paper_head import label, over_the_border, paper_head, to_and_facts

BUSINESS = Party(
    "Skelderdale Foot Trimming",
    ("2 Mill Lane", "SK0 0AA"),
    "GB000000000",
    "01632 960 001",
    registration="0815",
    registration_name="Company number",
)


def told(flowables):
    """All words in the order in which they stand, cell by cell."""
    if isinstance(flowables, str):
        return [flowables] if flowables else []
    if isinstance(flowables, (list, tuple)):
        return [text for part in flowables for text in told(part)]
    if hasattr(flowables, "getPlainText"):
        return [flowables.getPlainText()]
    return told(getattr(flowables, "_cellvalues", []))


def test_the_business_stands_with_all_its_numbers_and_the_kind_of_paper():
    head = told(paper_head(BUSINESS, "VAT", "Invoice", "What it comes to", None))
    assert head == [
        "Skelderdale Foot Trimming",
        "2 Mill Lane, SK0 0AA, 01632 960 001",
        "VAT number GB000000000 · Company number 0815",
        "Invoice",
        "What it comes to",
    ]


def test_a_business_without_numbers_has_no_line_for_them():
    assert told(paper_head(Party("A", ("B",)), "VAT", "Invoice", "T", None)) == ["A", "B", "Invoice", "T"]


def test_a_number_of_no_known_kind_is_called_what_it_is():
    party = Party("A", ("B",), registration="7")
    assert told(to_and_facts(party, "VAT", [])) == ["To", "A", "B", "Registration number 7"]


def test_facts_stand_in_two_columns_the_first_the_longer():
    facts = [(f"name{number}", f"value{number}") for number in range(3)]
    assert told(to_and_facts(Party("A", ()), "VAT", facts)) == [
        "To", "A", "name0", "value0", "name1", "value1", "name2", "value2",
    ]  # fmt: skip


def test_a_label_is_plain_words():
    assert label("Due").getPlainText() == "Due"


def test_a_day_in_the_title_is_not_broken_over_two_lines():
    (title,) = told(paper_head(Party("A", ("B",)), "VAT", "", "Open since 1 Jan 2027 and INV 1", None))[-1:]
    assert title == "Open since 1\u00a0Jan\u00a02027 and INV 1"


def test_an_address_over_the_border_ends_with_its_country_once():
    here, there = Party("A", ("1 Rue",), country="FR"), Party("B", ("Weg 2",), country="DE")
    assert over_the_border(here, there).address == ("1 Rue", "France")
    assert over_the_border(here, here) == here
    written = Party("A", ("1 Rue", "FRANCE "), country="FR")
    assert over_the_border(written, there) == written
