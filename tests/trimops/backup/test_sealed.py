"""A sealed stream opens to what was sealed, with its key only, whole only, and in little memory."""

import io
import random
import tracemalloc

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from trimops.backup.errors import FaultyBackup, WrongKey
from trimops.backup.sealed import (
    CHUNK,
    HIGHEST_COST,
    MAC,
    MAGIC,
    SALT,
    TAG,
    OpeningReader,
    SealingWriter,
    is_sealed,
    refuse_weak_key,
)

KEY = "nine sound cows in a crush"
HEAD = len(MAGIC) + 1 + SALT + MAC
WHOLE = CHUNK + TAG
SIZES = [0, 1, CHUNK - 1, CHUNK, CHUNK + 1, 2 * CHUNK, 2 * CHUNK + 12345]


def sealed(plain: bytes, *, key: str = KEY, step: int = 700_001) -> bytes:
    sink = io.BytesIO()
    writer = SealingWriter(sink, key, cost=2)
    for start in range(0, len(plain), step):
        assert writer.write(plain[start : start + step]) == len(plain[start : start + step])
    writer.close()
    return sink.getvalue()


def opened(raw: bytes, *, key: str = KEY, step: int = 300_007) -> bytes:
    reader, read = OpeningReader(io.BytesIO(raw), key), []
    while piece := reader.read(step):
        read.append(piece)
    return b"".join(read)


def noise(size: int) -> bytes:
    return random.Random(size).randbytes(size)


@pytest.mark.parametrize("size", SIZES)
def test_what_was_sealed_comes_out_again(size):
    plain = noise(size)
    raw = sealed(plain)
    assert opened(raw) == plain
    assert is_sealed(io.BytesIO(raw))
    assert not is_sealed(io.BytesIO(plain))
    chunks = max(1, -(-size // CHUNK))
    assert len(raw) == HEAD + size + TAG * chunks


def test_nothing_of_what_was_sealed_stands_in_the_file():
    assert b"the cow of Low Tarnock" not in sealed(b"the cow of Low Tarnock" * 1000)


def test_the_same_is_never_sealed_the_same_twice():
    assert sealed(b"cow") != sealed(b"cow")


@pytest.mark.parametrize("size", SIZES)
def test_another_key_opens_nothing(size):
    with pytest.raises(WrongKey):
        opened(sealed(noise(size)), key=KEY + "!")


@pytest.mark.parametrize("size", SIZES)
def test_a_file_cut_short_anywhere_is_refused(size):
    raw = sealed(noise(size))
    ends = {
        0,
        5,
        len(MAGIC),
        HEAD - 1,
        HEAD,
        HEAD + 5,
        HEAD + TAG,
        HEAD + WHOLE,
        HEAD + 2 * WHOLE,
        len(raw) - 1,
    }
    for end in sorted(end for end in ends if end < len(raw)):
        with pytest.raises((FaultyBackup, WrongKey)):
            opened(raw[:end])


@pytest.mark.parametrize(
    "rearranged",
    [
        pytest.param(lambda head, one, two, last: [head, two, one, last], id="two swapped"),
        pytest.param(lambda head, one, two, last: [head, one, one, last], id="one twice"),
        pytest.param(lambda head, one, two, last: [head, two, last], id="the first gone"),
        pytest.param(lambda head, one, two, last: [head, one, last], id="one in the middle gone"),
        pytest.param(lambda head, one, two, last: [head, one, two], id="the last gone"),
        pytest.param(lambda head, one, two, last: [head, one, two, last, last], id="the last twice"),
        pytest.param(lambda head, one, two, last: [head, one, two, last, b"more"], id="something behind"),
    ],
)
def test_chunks_that_were_moved_are_refused(rearranged):
    raw = sealed(noise(2 * CHUNK + 999))
    parts = (
        raw[:HEAD],
        raw[HEAD : HEAD + WHOLE],
        raw[HEAD + WHOLE : HEAD + 2 * WHOLE],
        raw[HEAD + 2 * WHOLE :],
    )
    with pytest.raises(FaultyBackup, match="altered or cut short"):
        opened(b"".join(rearranged(*parts)))


def test_chunks_of_another_file_under_the_same_key_are_refused():
    one, other = sealed(noise(CHUNK + 7)), sealed(noise(CHUNK + 8))
    with pytest.raises(FaultyBackup):
        opened(one[:HEAD] + other[HEAD:])


RAW = sealed(noise(CHUNK + 4321))


@given(st.integers(0, len(RAW) - 1), st.integers(1, 255))
@settings(max_examples=examples(120))
def test_a_byte_altered_anywhere_is_noticed(place, change):
    altered = bytearray(RAW)
    altered[place] ^= change
    # because: a higher cost than was written would be worked out before it can be refused, in seconds and gigabytes
    if place == len(MAGIC) and 12 < altered[place] <= HIGHEST_COST:
        return
    with pytest.raises((FaultyBackup, WrongKey)):
        opened(bytes(altered))


def test_a_head_that_asks_for_gigabytes_is_refused_at_once():
    greedy = bytearray(RAW)
    greedy[len(MAGIC)] = 40
    with pytest.raises(FaultyBackup):
        opened(bytes(greedy))


def test_memory_stays_small_whatever_the_size():
    class Nowhere(io.RawIOBase):
        def write(self, data):
            return len(data)

    piece = noise(CHUNK // 2)
    writer = SealingWriter(Nowhere(), KEY, cost=2)
    tracemalloc.start()
    for _ in range(80):
        writer.write(piece)
    writer.close()
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak < 8 * CHUNK


def test_a_short_key_is_refused():
    with pytest.raises(WrongKey, match="openssl rand"):
        refuse_weak_key("hoof")
    refuse_weak_key(KEY)
