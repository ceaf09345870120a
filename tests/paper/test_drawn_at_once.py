"""Papers that several threads of a web worker draw at the same moment.

A day of 200 businesses found an invoice that broke (tests/bench/load): reportlab's TTFontFace reads its file at
a place that all threads share. In a trial of 1,190 papers by four threads four broke and one had other bytes.
"""

import time
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from threading import Lock

import pytest
from reportlab.pdfbase.ttfonts import TTFontFace
from reportlab.platypus import Paragraph

from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.styles import style

INFO = SheetInfo("Papers", "Ash & Rye", "At once", datetime(2026, 3, 2, tzinfo=UTC), "Ash & Rye")
WORDS = ("Trimmed: 412, left hind", "Blocks off by 30 March", "£36.00 to pay", "Zoë – Øster Å, 5 °C")


class Watched:
    """The cutting of a face, slowed down, and how many threads are within it at most."""

    def __init__(self) -> None:
        self.within, self.most, self.times = 0, 0, 0
        self._lock, self._cut = Lock(), TTFontFace.makeSubset

    def cut(self, face, subset):
        with self._lock:
            self.within += 1
            self.times += 1
            self.most = max(self.most, self.within)
        time.sleep(0.01)
        try:
            return self._cut(face, subset)
        finally:
            with self._lock:
                self.within -= 1


@pytest.fixture
def watched(monkeypatch):
    watched = Watched()
    monkeypatch.setattr(TTFontFace, "makeSubset", lambda face, subset: watched.cut(face, subset))
    return watched


def drawn(words):
    return build_sheet([Paragraph(words, style())], INFO)


def test_a_face_is_cut_for_one_paper_at_a_time_and_each_is_as_it_would_be_alone(watched):
    alone = {words: drawn(words) for words in WORDS}
    with ThreadPoolExecutor(4) as threads:
        together = list(threads.map(drawn, WORDS * 4))
    assert together == [alone[words] for words in WORDS * 4]
    assert watched.times >= 20
    assert watched.most == 1
