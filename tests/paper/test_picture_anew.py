"""Only the dots of a picture are kept."""

from io import BytesIO

import pytest
from PIL import Image, ImageChops, ImageStat
from PIL.PngImagePlugin import PngInfo

from trimops.paper.picture_anew import JPEG, PNG, PictureUnreadable, picture_anew

PLACE = "the lane behind the parlour"


def picture(kind=JPEG, size=(64, 48), mode="RGB", **saved):
    shade = Image.linear_gradient("L").resize(size).convert(mode)
    out = BytesIO()
    shade.save(out, kind, **saved)
    return out.getvalue()


def opened(content):
    shown = Image.open(BytesIO(content))
    shown.load()
    return shown


def exif(turned=1):
    told = Image.Exif()
    told[0x010E], told[0x0112] = PLACE, turned
    told.get_ifd(0x8825)[1] = "N"
    return told.tobytes()


@pytest.mark.parametrize(
    "said",
    [
        picture(exif=exif()),
        picture(comment=PLACE.encode()),
        picture(icc_profile=PLACE.encode() * 40),
        picture(PNG, pnginfo=(lambda info: info.add_text("place", PLACE) or info)(PngInfo())),
        picture(PNG, exif=exif()),
    ],
)
def test_what_a_camera_wrote_beside_the_dots_is_gone(said):
    assert PLACE.encode() in said
    kept = picture_anew(said, (JPEG, PNG))
    assert PLACE.encode() not in kept
    assert not opened(kept).getexif()
    assert opened(kept).size == (64, 48)


@pytest.mark.parametrize("glued", [b"PK\x03\x04 a zip", b"<script>alert(1)</script>", b"%PDF-1.7", b"MZ\x90"])
@pytest.mark.parametrize("kind", [JPEG, PNG])
def test_what_was_glued_on_behind_is_gone(kind, glued):
    assert glued not in picture_anew(picture(kind) + glued, (kind,))


def test_a_program_hidden_in_a_segment_is_gone():
    hidden = b"<script>alert(1)</script>"
    whole = picture()
    said = whole[:2] + b"\xff\xfe" + (len(hidden) + 2).to_bytes(2, "big") + hidden + whole[2:]
    assert opened(said).size == (64, 48)
    assert hidden not in picture_anew(said)


def test_it_looks_the_same_and_does_not_grow():
    said = picture(size=(400, 300), quality=70)
    kept = picture_anew(said)
    gone = ImageStat.Stat(ImageChops.difference(opened(said), opened(kept))).mean
    assert max(gone) < 1
    assert len(kept) < 1.1 * len(said)


def of_one_colour():
    out = BytesIO()
    Image.new("RGB", (40, 40), (31, 111, 67)).save(out, JPEG)
    return out.getvalue()


def test_drawn_anew_twice_it_is_the_same_bytes():
    once = picture_anew(of_one_colour())
    assert picture_anew(once) == once


def test_a_camera_that_was_held_upright_is_believed():
    assert opened(picture_anew(picture(exif=exif(turned=6)))).size == (48, 64)


@pytest.mark.parametrize("mode", ["L", "CMYK"])
def test_other_colours_become_a_jpeg_that_browsers_show(mode):
    assert opened(picture_anew(picture(mode=mode))).mode in ("L", "RGB")


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGBA", "I;16"])
def test_a_png_keeps_what_is_see_through(mode):
    kept = opened(picture_anew(picture(PNG, mode=mode) if mode != "I;16" else sixteen_bits(), (PNG,)))
    assert kept.mode in ("1", "L", "LA", "P", "RGBA")


def sixteen_bits():
    out = BytesIO()
    Image.new("I;16", (8, 8), 40_000).save(out, PNG)
    return out.getvalue()


def test_a_palettes_see_through_colour_stays_so():
    out = BytesIO()
    shade = Image.new("P", (8, 8), 3)
    shade.putpalette(bytes(range(12)))
    shade.save(out, PNG, transparency=3)
    assert opened(picture_anew(out.getvalue(), (PNG,))).convert("RGBA").getpixel((0, 0))[3] == 0


def bomb():
    """60,000 x 60,000 dots said in the head of a small file."""
    whole = picture(size=(16, 16))
    place = whole.index(b"\xff\xc0") + 5
    return whole[:place] + (60_000).to_bytes(2, "big") * 2 + whole[place + 4 :]


@pytest.mark.parametrize(
    "bad",
    [
        b"",
        b"GIF89a",
        picture(PNG),
        picture()[:200],
        picture(size=(300, 300))[:-800],
        b"\xff\xd8\xff\xe0\x00\x10JFIF no picture \xff\xd9",
        picture(size=(4000, 3001)),
        bomb(),
    ],
)
def test_what_is_no_whole_jpeg_of_a_size_of_sense_is_refused(bad):
    with pytest.raises(PictureUnreadable):
        picture_anew(bad)
