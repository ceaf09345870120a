"""Pictures as a phone's camera makes them, each another: 3000 x 2000, drawn from a seed."""

import io
from collections.abc import Callable
from random import Random

from PIL import Image, ImageDraw

WIDTH, HEIGHT = 3000, 2000


def camera(seed: int) -> Callable[[], bytes]:
    """Each call takes another picture; the same seed takes the same ones in the same order."""
    dice = Random(seed)
    return lambda: jpeg(dice)


def jpeg(dice: Random) -> bytes:
    """Blurred ground with hard edges on it, so that the file is as heavy as a photograph of straw and horn."""
    small = Image.frombytes("RGB", (WIDTH // 10, HEIGHT // 10), dice.randbytes(WIDTH * HEIGHT * 3 // 100))
    picture = small.resize((WIDTH, HEIGHT), Image.Resampling.BILINEAR)
    pen = ImageDraw.Draw(picture)
    for _ in range(40):
        x, y = dice.randrange(WIDTH), dice.randrange(HEIGHT)
        colour = (dice.randrange(256), dice.randrange(256), dice.randrange(256))
        pen.line((x, y, dice.randrange(WIDTH), dice.randrange(HEIGHT)), fill=colour, width=9)
    kept = io.BytesIO()
    picture.save(kept, "JPEG", quality=90)
    return kept.getvalue()
