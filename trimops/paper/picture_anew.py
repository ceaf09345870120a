"""A picture that somebody sent, drawn anew: only its dots are kept.

What a camera writes beside them (the place, the time, the phone), a comment, a preview, a second picture or a program
glued on behind it: all of that stays outside, and a file that is a picture and something else is only a picture after.
"""

from collections.abc import Sequence
from io import BytesIO
from typing import Final

from PIL import Image, ImageOps, JpegImagePlugin

from trimops.paper.photos import UNREADABLE

JPEG: Final = "JPEG"
PNG: Final = "PNG"
MOST_DOTS: Final = 12_000_000
"""In memory at three or four bytes each: less than 50 MB. A phone sends at most 1600 x 1600."""
_QUALITY: Final = 85
_KEPT_MODES: Final = frozenset({"1", "L", "LA", "P", "RGB", "RGBA"})


class PictureUnreadable(ValueError):
    """The bytes are no whole picture of these kinds, or it has too many dots; the message says which."""


def picture_anew(content: bytes, kinds: Sequence[str] = (JPEG,), most_dots: int = MOST_DOTS) -> bytes:
    """The same picture as a file of ours, of the kind it came as and the right way up. PictureUnreadable else.

    A JPEG keeps its own tables, so that it loses next to nothing and does not grow. The same bytes make the same bytes.
    """
    try:
        with Image.open(BytesIO(content), formats=tuple(kinds)) as picture:
            if picture.width * picture.height > most_dots:
                raise PictureUnreadable("has more dots than a picture needs")
            return _jpeg(picture) if picture.format != PNG else _png(picture)
    except PictureUnreadable:
        raise
    except (*UNREADABLE, EOFError, Image.DecompressionBombError, Image.DecompressionBombWarning) as fault:
        raise PictureUnreadable("cannot be read as a picture") from fault


def _jpeg(picture: Image.Image) -> bytes:
    picture.load()
    tables = getattr(picture, "quantization", None)
    sampling = JpegImagePlugin.get_sampling(picture) if picture.mode in ("RGB", "L") else -1
    upright = _upright(picture)
    is_kept = tables and upright.mode in ("RGB", "L")
    drawn = _bare(upright if is_kept else upright.convert("RGB"))
    out = BytesIO()
    if is_kept and upright.mode == picture.mode:
        drawn.save(out, JPEG, qtables=tables, subsampling=sampling)
    else:
        drawn.save(out, JPEG, quality=_QUALITY)
    return out.getvalue()


def _png(picture: Image.Image) -> bytes:
    upright = _upright(picture)
    drawn = _bare(upright if upright.mode in _KEPT_MODES else upright.convert("RGBA"))
    out = BytesIO()
    drawn.save(out, PNG)
    return out.getvalue()


def _upright(picture: Image.Image) -> Image.Image:
    """As it is meant to be seen: how the camera was held goes with all else it wrote."""
    try:
        return ImageOps.exif_transpose(picture)
    except (*UNREADABLE, KeyError, TypeError, UserWarning):
        # because: broken words of a camera spoil no picture
        return picture


def _bare(picture: Image.Image) -> Image.Image:
    """Without what hangs on it; which colour of a palette is see-through belongs to the dots."""
    drawn = picture.copy()
    drawn.info = {"transparency": seen} if (seen := picture.info.get("transparency")) is not None else {}
    drawn.getexif().clear()
    return drawn
