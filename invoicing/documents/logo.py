"""The logo of a business, made ready for paper: at most 30 x 18 mm, no more dots than are seen, on white."""

from functools import lru_cache
from io import BytesIO

from PIL import Image
from reportlab.lib.units import mm
from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable

from trimops.kernel.errors import RuleBroken
from trimops.paper.photos import UNREADABLE
from trimops.paper.picture_anew import JPEG, PNG, PictureUnreadable, picture_anew

LOGO_WIDTH = 30 * mm
LOGO_HEIGHT = 18 * mm
MOST_BYTES = 2_000_000
_MOST_DOTS = 8_000_000
_DOTS_PER_POINT = 300 / 72
_QUALITY = 90


class LogoUnreadable(RuleBroken):
    """The bytes are no picture that can be printed."""

    code = "logo_unreadable"


class _Logo(Flowable):
    def __init__(self, picture: bytes) -> None:
        super().__init__()
        self.reader = ImageReader(BytesIO(picture))
        across, down = self.reader.getSize()
        scale = min(LOGO_WIDTH / across, LOGO_HEIGHT / down)
        self.width, self.height = across * scale, down * scale

    def wrap(self, _available_width: float, _available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        self.canv.drawImage(self.reader, 0, 0, self.width, self.height)


def logo_block(logo: bytes) -> Flowable:
    """The logo as a piece of a page. Raises LogoUnreadable, saying what to do."""
    return _Logo(printable_logo(logo))


def bare_logo(logo: bytes) -> bytes:
    """What is kept of it: its dots, drawn anew. Raises LogoUnreadable where it cannot be printed either."""
    printable_logo(logo)
    try:
        drawn = picture_anew(logo, (PNG, JPEG), _MOST_DOTS)
    except PictureUnreadable as fault:
        raise LogoUnreadable(f"The logo {fault}: choose a PNG or JPEG picture.") from fault
    printable_logo(drawn)  # because: drawn anew it may have grown beyond what is printed
    return drawn


@lru_cache(maxsize=8)
def printable_logo(logo: bytes) -> bytes:
    """PNG or JPEG, red-green-blue without transparency (which archives dislike), of 300 dots to the inch at most."""
    if len(logo) > MOST_BYTES:
        raise LogoUnreadable(
            f"The logo is larger than {MOST_BYTES // 1_000_000} MB: choose a smaller picture."
        )
    try:
        with Image.open(BytesIO(logo), formats=("PNG", "JPEG")) as picture:
            if picture.width * picture.height > _MOST_DOTS:
                raise LogoUnreadable("The logo has more dots than can be printed: choose a smaller picture.")
            return _saved(_on_white(picture), picture.format or "PNG")
    except (*UNREADABLE, Image.DecompressionBombError, Image.DecompressionBombWarning) as fault:
        raise LogoUnreadable("The logo cannot be read: choose a PNG or JPEG picture.") from fault


def _on_white(picture: Image.Image) -> Image.Image:
    most = int(LOGO_WIDTH * _DOTS_PER_POINT), int(LOGO_HEIGHT * _DOTS_PER_POINT)
    whole = picture.convert("RGBA")
    whole.thumbnail(most)
    ground = Image.new("RGB", whole.size, "white")
    ground.paste(whole, mask=whole.getchannel("A"))
    return ground


def _saved(picture: Image.Image, kind: str) -> bytes:
    out = BytesIO()
    picture.save(out, kind, quality=_QUALITY)
    return out.getvalue()
