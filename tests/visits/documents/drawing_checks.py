"""What holds for every drawing: it keeps within its sheet, and its words do not lie over each other."""

from trimops.paper.drawing import Circle, Curve, Drawing, Text
from trimops.paper.typefaces import BODY, BOLD, width_of


def words_box(text: Text) -> tuple[float, float, float, float]:
    width = width_of(text.words, BOLD if text.bold else BODY, text.size)
    left = text.at[0] - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * width
    return left, text.at[1] - 0.7 * text.size, left + width, text.at[1] + 0.05 * text.size


def stray_shapes(drawing: Drawing, slack: float = 0.5) -> list[object]:
    """Shapes that reach over the edge."""
    stray = []
    for shape in drawing.shapes:
        if isinstance(shape, Text):
            left, top, right, bottom = words_box(shape)
            points = [(left, top), (right, bottom)]
        elif isinstance(shape, Circle):
            (x, y), r = shape.centre, shape.radius
            points = [(x - r, y - r), (x + r, y + r)]
        elif isinstance(shape, Curve):
            points = [shape.start]
        else:
            points = list(shape.points)
        if any(
            not (-slack <= x <= drawing.width + slack and -slack <= y <= drawing.height + slack)
            for x, y in points
        ):
            stray.append(shape)
    return stray


def clashing_words(drawing: Drawing) -> list[tuple[str, str]]:
    """Pairs of words that lie over each other."""
    texts = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    boxes = [(text.words, words_box(text)) for text in texts]
    return [
        (one, other)
        for i, (one, a) in enumerate(boxes)
        for other, b in boxes[i + 1 :]
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]
