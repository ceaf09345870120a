"""An order as text and as a mail that is ready."""

from datetime import date
from decimal import Decimal
from urllib.parse import parse_qs, unquote, urlsplit

from visits.domain.kit.order_text import OrderedLine, line_text, mail_address, order_text
from visits.domain.kit.stock_kinds import Unit

WOOD = OrderedLine("Wooden block", "130 mm", Unit.EACH, Decimal("40.00"), 2)
GLUE = OrderedLine("Glue, 2-part", "", Unit.ML, Decimal(2000), 1)


def test_lines_say_packs_unit_name_and_size():
    assert line_text(WOOD) == "2 packs of 40: Wooden block, 130 mm"
    assert line_text(GLUE) == "1 pack of 2000 ml: Glue, 2-part"
    gloves = OrderedLine("Gloves large", "large", Unit.PAIR, Decimal(50), 3)
    assert line_text(gloves) == "3 packs of 50 pairs: Gloves large"
    assert line_text(OrderedLine("Disc", "", Unit.EACH, Decimal(1), 5)) == "5 of Disc"


def test_the_text_is_whole_and_needs_no_day():
    text = order_text([WOOD, GLUE], "The Trimmers", date(2026, 12, 7))
    assert text.split("\n") == [
        "Please send us:",
        "",
        "- 2 packs of 40: Wooden block, 130 mm",
        "- 1 pack of 2000 ml: Glue, 2-part",
        "",
        "We need it by 7 December 2026.",
        "",
        "The Trimmers",
    ]
    assert order_text([WOOD], "The Trimmers", None).split("\n")[-3:] == [
        "- 2 packs of 40: Wooden block, 130 mm",
        "",
        "The Trimmers",
    ]


def test_a_mail_carries_the_text_unharmed():
    text = "Blöcke & 2 % = ?\n- one # two"
    address = urlsplit(mail_address("sales+kit@example.invalid", "Order & more", text))
    assert address.scheme == "mailto"
    assert unquote(address.path) == "sales+kit@example.invalid"
    told = parse_qs(address.query)
    assert told == {"subject": ["Order & more"], "body": [text.replace("\n", "\r\n")]}
    assert address.fragment == ""
