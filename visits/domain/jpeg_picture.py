"""A picture as a phone sends it: a JPEG of a bounded size.

The marks are those of the published format (ISO/IEC 10918-1, annex B: SOI opens, EOI closes a picture).
"""

MOST_PICTURE_BYTES = 256 * 1024
START_OF_IMAGE, END_OF_IMAGE = b"\xff\xd8\xff", b"\xff\xd9"


def picture_fault(picture: bytes) -> str:
    """Why these bytes are not taken as a picture; "" when they are."""
    if len(picture) > MOST_PICTURE_BYTES:
        return f"is larger than {MOST_PICTURE_BYTES} bytes"
    if not picture.startswith(START_OF_IMAGE):
        return "is no JPEG picture"
    if not picture.rstrip(b"\x00").endswith(END_OF_IMAGE):
        return "is a JPEG picture that was cut off"
    return ""
