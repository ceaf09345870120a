import gzip
import zlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.outside.bounded_body import bounded_body
from trimops.outside.no_answer import NoAnswer, Why

PACKED = {"": bytes, "gzip": gzip.compress, "deflate": zlib.compress}


def cut(body, size):
    return [body[at : at + size] for at in range(0, len(body), size)]


@given(st.binary(max_size=2000), st.sampled_from(sorted(PACKED)), st.integers(1, 300))
def test_a_body_comes_through_whatever_its_parts_and_packing(body, packing, size):
    assert bounded_body(cut(PACKED[packing](body), size), packing, 3000) == body


@pytest.mark.parametrize("packing", sorted(PACKED))
def test_the_largest_body_is_taken_and_one_byte_more_is_not(packing):
    pack = PACKED[packing]
    assert len(bounded_body([pack(b"a" * 5000)], packing, 5000)) == 5000
    with pytest.raises(NoAnswer) as no:
        bounded_body([pack(b"a" * 5001)], packing, 5000)
    assert no.value.why is Why.LARGE


@pytest.mark.parametrize(
    ("body", "packing"),
    [
        (b"no gzip", "gzip"),
        (gzip.compress(b"whole", mtime=0)[:-6], "gzip"),
        (b"", "gzip"),
        (b"x", "br"),
        (b"x", "gzip, gzip"),
    ],
)
def test_a_broken_or_unknown_packing_is_told(body, packing):
    with pytest.raises(NoAnswer) as no:
        bounded_body([body], packing, 5000)
    assert no.value.why is Why.BROKE_OFF
