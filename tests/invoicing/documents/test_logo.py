from io import BytesIO

import pytest
from PIL import Image

from invoicing.documents.hybrid_pdf import archive_pdf
from invoicing.documents.invoice_pdf import invoice_pdf
from invoicing.documents.logo import LOGO_HEIGHT, LOGO_WIDTH, LogoUnreadable, logo_block, printable_logo
from tests.invoicing.documents.paper_pictures import pixels
from trimops.kernel.errors import RuleBroken

GREEN = (31, 111, 67)


def picture(kind="PNG", mode="RGB", size=(600, 300), colour=GREEN):
    out = BytesIO()
    Image.new(mode, size, colour).save(out, kind)
    return out.getvalue()


def test_it_is_seen_on_the_paper_and_the_paper_stays_an_archive_file(make_invoice):
    paper = make_invoice(logo=picture())
    assert GREEN in pixels(invoice_pdf(paper))
    assert GREEN not in pixels(invoice_pdf(make_invoice()))
    assert archive_pdf(paper) == archive_pdf(paper)


@pytest.mark.parametrize("size", [(600, 300), (100, 900), (3000, 40), (10, 10)])
def test_it_keeps_its_proportions_within_its_place(size):
    block = logo_block(picture(size=size))
    assert block.width <= LOGO_WIDTH + 0.01
    assert block.height <= LOGO_HEIGHT + 0.01
    assert max(block.width / LOGO_WIDTH, block.height / LOGO_HEIGHT) == pytest.approx(1)
    assert block.width / block.height == pytest.approx(size[0] / size[1], rel=0.25)


@pytest.mark.parametrize(
    ("kind", "mode", "colour"),
    [
        ("PNG", "RGBA", (0, 0, 0, 0)),
        ("PNG", "LA", (0, 0)),
        ("PNG", "P", 0),
        ("JPEG", "CMYK", (9, 9, 9, 9)),
        ("JPEG", "L", 7),
    ],
)
def test_whatever_it_was_it_is_printed_in_red_green_and_blue_on_white(kind, mode, colour):
    ready = Image.open(BytesIO(printable_logo(picture(kind, mode, colour=colour))))
    assert (ready.mode, ready.format) == ("RGB", kind)
    if mode in ("RGBA", "LA"):
        assert ready.getpixel((0, 0)) == (255, 255, 255)


def test_more_dots_than_are_seen_are_not_kept():
    assert Image.open(BytesIO(printable_logo(picture(size=(1200, 600))))).width <= 355


@pytest.mark.parametrize(
    ("logo", "told"),
    [
        (b"", "PNG or JPEG"),
        (b"no picture at all", "PNG or JPEG"),
        (picture()[:60], "PNG or JPEG"),
        (picture("GIF", "P", colour=1), "PNG or JPEG"),
        (picture(mode="1", size=(3000, 3000), colour=1), "smaller"),
        (b"x" * 2_000_001, "larger than 2 MB"),
    ],
)
def test_what_is_no_picture_is_refused_in_words(logo, told):
    with pytest.raises(LogoUnreadable, match=told) as refusal:
        printable_logo(logo)
    assert isinstance(refusal.value, RuleBroken)
