"""Who is at work stands for what runs inside the block, and for nothing else."""

import threading

from trimops.watch.doing import NOBODY, Doing, done_by, known_better, who_does_it


def test_inside_the_block_it_is_theirs_and_outside_nobodys():
    with done_by(Doing(by=3, via="POST farm_edit")):
        with done_by(Doing(via="errand visits.plan_week")):
            assert who_does_it() == Doing(via="errand visits.plan_week")
        assert who_does_it().by == 3
    assert who_does_it() is NOBODY


def test_what_is_found_out_later_counts_for_the_rest_of_the_block():
    with done_by(Doing(by=3, via="POST")):
        known_better(via="POST farm_edit")
        assert who_does_it() == Doing(by=3, via="POST farm_edit")
        known_better(by=4)
        assert who_does_it() == Doing(by=4, via="POST farm_edit")
    known_better(by=5)
    assert who_does_it() is NOBODY


def test_another_thread_is_nobodys():
    seen = []
    with done_by(Doing(by=3)):
        thread = threading.Thread(target=lambda: seen.append(who_does_it()))
        thread.start()
        thread.join()
    assert seen == [NOBODY]
