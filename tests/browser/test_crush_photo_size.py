"""Pictures taken at the crush are made small, stay the right way up, and lose what the camera wrote beside them.

Read back with Pillow, which is not what made them.
"""

import base64
import random
from io import BytesIO

import pytest
from PIL import Image
from PIL.ExifTags import GPS, IFD, Base

from tests.browser.conftest import Site
from visits.domain.jpeg_picture import picture_fault

pytestmark = pytest.mark.xdist_group("browser")
MOST = 200_000
SMALL = """async ([kind, words]) => {
  const bytes = Uint8Array.from(atob(words), (letter) => letter.charCodeAt(0));
  const { smallPhoto } = await import("/static/visits/crush/photo_size.js");
  const blob = await smallPhoto(new Blob([bytes], { type: kind }));
  const made = new Uint8Array(await blob.arrayBuffer());
  return [blob.type, btoa(Array.from(made, (byte) => String.fromCharCode(byte)).join(""))];
}"""


@pytest.fixture
def small(door: Site):
    door.open("/account/login/")

    def made(content: bytes, kind: str = "image/jpeg") -> Image.Image:
        told, words = door.page.evaluate(SMALL, [kind, base64.b64encode(content).decode()])
        answer = base64.b64decode(words)
        assert told == "image/jpeg"
        assert len(answer) <= MOST
        assert picture_fault(answer) == "", "the server takes it"
        return Image.open(BytesIO(answer))

    return made


def noise(width: int, height: int) -> Image.Image:
    """The hardest picture there is to make small."""
    return Image.frombytes("RGB", (width, height), random.Random(4).randbytes(width * height * 3))


def saved(picture: Image.Image, kind: str = "JPEG", **more: object) -> bytes:
    into = BytesIO()
    picture.save(into, kind, **more)
    return into.getvalue()


def test_a_large_picture_is_scaled_down_and_keeps_its_shape(small):
    picture = Image.linear_gradient("L").resize((4000, 3000)).convert("RGB")
    assert small(saved(picture, quality=95)).size == (1600, 1200)


def test_even_noise_is_made_small_enough(small):
    picture = small(saved(noise(2400, 1800), quality=95))
    assert abs(picture.width / picture.height - 4 / 3) < 0.01


def test_a_small_picture_is_not_blown_up(small):
    assert small(saved(Image.new("RGB", (300, 200), "brown"))).size == (300, 200)


def marked() -> Image.Image:
    """Left half red, right half blue."""
    picture = Image.new("RGB", (400, 200), "blue")
    picture.paste((255, 0, 0), (0, 0, 200, 200))
    return picture


def test_a_picture_taken_upright_is_the_right_way_up_and_the_place_is_gone(small):
    # EXIF orientation 6: to be turned a quarter clockwise to be seen as it was taken.
    notes = Image.Exif()
    notes[Base.Orientation] = 6
    notes[Base.Make] = "An invented phone"
    place = notes.get_ifd(IFD.GPSInfo)
    place[GPS.GPSLatitudeRef], place[GPS.GPSLatitude] = "N", (54.0, 6.0, 0.0)
    taken = saved(marked(), exif=notes)
    assert Image.open(BytesIO(taken)).getexif().get_ifd(IFD.GPSInfo)

    picture = small(taken)

    assert picture.size == (200, 400)
    top, bottom = (picture.getpixel((100, y)) for y in (50, 350))
    assert top[0] > 200 > 60 > top[2], "what was left is above now"
    assert bottom[2] > 200 > 60 > bottom[0]
    assert dict(picture.getexif()) == {}
    assert "exif" not in picture.info
    assert "xmp" not in picture.info


@pytest.mark.parametrize(("kind", "told"), [("PNG", "image/png"), ("WEBP", "image/webp")])
def test_other_kinds_of_pictures_become_jpegs(kind, told, small):
    assert small(saved(marked(), kind), told).format == "JPEG"


def test_what_is_see_through_becomes_white(small):
    assert (
        small(saved(Image.new("RGBA", (50, 50), (0, 0, 0, 0)), "PNG"), "image/png").getpixel((9, 9))
        == (255,) * 3
    )


def test_what_is_no_picture_is_said_in_plain_words(small):
    with pytest.raises(Exception, match="This phone cannot read that picture"):
        small(b"no picture")
