import threading

import pytest

from trimops.watch.marks import marked, marks, request_id


def test_marks_hold_inside_the_block_and_are_gone_after_it_also_when_it_breaks():
    with pytest.raises(ValueError, match="x"), marked(job="a"):
        with marked(job_id="7"):
            assert marks() == {"job": "a", "job_id": "7"}
        assert marks() == {"job": "a"}
        raise ValueError("x")
    assert marks() == {}


def test_another_thread_has_none_of_them():
    seen = []
    with marked(request_id="here"):
        other = threading.Thread(target=lambda: seen.append(dict(marks())))
        other.start()
        other.join()
    assert seen == [{}]


@pytest.mark.parametrize(
    "given", ["1-67891233-abcdef012345678912345678", "a" * 8, "0192f0c1-7c3a-7c3a-9f00-0a1b2c3d4e5f"]
)
def test_a_sane_number_that_a_proxy_gave_is_kept(given):
    assert request_id(given) == given


@pytest.mark.parametrize(
    "given", [None, "", "short", "x" * 65, "abcdefgh\nforged line", 'abcdefgh"', "abcdefgh ü", "-abcdefgh"]
)
def test_any_other_is_replaced_by_one_of_our_own(given):
    made = request_id(given)
    assert made != given
    assert len(made) == 32
    assert made != request_id(given)
