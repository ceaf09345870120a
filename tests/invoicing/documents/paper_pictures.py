"""Papers read back by code that is not ours: as pictures (pdfium), as codes (zxing) and as text by place."""

from io import BytesIO

import pypdfium2
import zxingcpp
from pypdf import PdfReader


def codes_of(pdf: bytes) -> list[str]:
    """What a reader of codes finds on the first page, seen at about 150 dots to the inch."""
    picture = pypdfium2.PdfDocument(pdf)[0].render(scale=2, grayscale=True).to_pil()
    return [code.text for code in zxingcpp.read_barcodes(picture)]


def page_texts(pdf: bytes) -> list[str]:
    """The text of each page, white space run together."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(BytesIO(pdf)).pages]


def pixels(pdf: bytes, page: int = 0) -> set[tuple[int, ...]]:
    """The colours on a page."""
    picture = pypdfium2.PdfDocument(pdf)[page].render(scale=1).to_pil().convert("RGB")
    return {colour for _, colour in picture.getcolors(maxcolors=1_000_000)}


def faces_not_inside(pdf: bytes) -> list[str]:
    """Names of fonts that a page uses without having them embedded."""
    found = []
    for page in PdfReader(BytesIO(pdf)).pages:
        for font in page["/Resources"]["/Font"].values():
            described = font.get_object()
            if "/FontFile2" not in described["/FontDescriptor"].get_object():
                found.append(str(described["/BaseFont"]))
    return found
