"""The one way across the wall opens for the block, for those who stand in it, and for nobody else."""

import asyncio
import contextvars
import threading
from concurrent.futures import ThreadPoolExecutor

import pytest
from asgiref.sync import async_to_sync, sync_to_async

from trimops.tenancy.errors import ScopeRequired
from trimops.tenancy.unscoped import is_unscoped, unscoped
from visits.models import Visit


def test_inside_the_block_all_businesses_are_seen_and_after_it_none(world):
    with unscoped("to count everybody's"):
        assert Visit.objects.count() == 4
    with pytest.raises(ScopeRequired):
        Visit.objects.count()


@pytest.mark.parametrize("reason", ["", "   ", None, 7])
def test_a_reason_in_words_is_asked_for(reason):
    with pytest.raises(ValueError, match="reason"):
        unscoped(reason)


def test_rows_asked_for_inside_but_read_outside_are_refused(world):
    with unscoped("to prepare"):
        rows = Visit.objects.all()
        raw = Visit.objects.raw("SELECT * FROM visits_visit")
        paused = Visit.objects.iterator()
    for late in (rows, raw, paused, raw.using("default"), raw.prefetch_related("farm")):
        with pytest.raises(ScopeRequired):
            list(late)


def test_hand_written_sql_runs_inside_only(world):
    with pytest.raises(ScopeRequired):
        list(Visit.objects.raw("SELECT * FROM visits_visit"))
    with unscoped("to read by hand"):
        assert len(list(Visit.objects.raw("SELECT * FROM visits_visit"))) == 4


def test_an_inner_block_does_not_close_the_outer_one(world):
    with unscoped("outer"):
        with unscoped("inner"):
            pass
        assert is_unscoped()
    assert not is_unscoped()


def test_an_error_closes_the_block():
    with pytest.raises(KeyError), unscoped("goes wrong"):
        raise KeyError
    assert not is_unscoped()


def test_one_opener_serves_twice_and_inside_itself():
    opener = unscoped("again")
    with opener, opener:
        assert is_unscoped()
    assert not is_unscoped()


def test_as_a_decorator_it_opens_while_the_function_runs():
    assert unscoped("one row is handed in")(is_unscoped)()
    assert not is_unscoped()


def test_as_a_decorator_it_opens_while_a_coroutine_runs():
    @unscoped("one row is handed in")
    async def inside():
        await asyncio.sleep(0)
        return is_unscoped()

    assert async_to_sync(inside)()


def test_a_generator_may_not_open_it():
    def rows():
        with unscoped("would stay open while it pauses"):
            yield is_unscoped()

    with pytest.raises(RuntimeError, match="generator"):
        next(rows())
    with pytest.raises(TypeError, match="generator"):
        unscoped("the same")(rows)
    assert not is_unscoped()


def test_another_thread_does_not_see_it():
    seen = []
    with unscoped("here only"):
        thread = threading.Thread(target=lambda: seen.append(is_unscoped()))
        thread.start()
        thread.join()
        with ThreadPoolExecutor(1) as pool:
            seen.append(pool.submit(is_unscoped).result())
    assert seen == [False, False]


def test_a_copied_context_is_closed_with_the_block():
    with unscoped("here only"):
        context = contextvars.copy_context()
        assert context.run(is_unscoped)
    assert not context.run(is_unscoped)


def test_a_task_started_inside_is_closed_with_the_block():
    async def outlive(done):
        await done.wait()
        return is_unscoped()

    async def main():
        done = asyncio.Event()
        with unscoped("here only"):
            task = asyncio.create_task(outlive(done))
            await asyncio.sleep(0)
        done.set()
        return await task

    assert async_to_sync(main)() is False


def test_two_tasks_do_not_see_each_others():
    async def one(inside, leave):
        with unscoped("mine"):
            inside.set()
            await leave.wait()
            return is_unscoped()

    async def other(inside, leave):
        await inside.wait()
        seen = is_unscoped(), await sync_to_async(is_unscoped)()
        leave.set()
        return seen

    async def main():
        inside, leave = asyncio.Event(), asyncio.Event()
        return await asyncio.gather(one(inside, leave), other(inside, leave))

    assert async_to_sync(main)() == [True, (False, False)]


def test_a_coroutine_inside_reads_with_it(world):
    async def count():
        with unscoped("to count everybody's"):
            return await Visit.objects.acount()

    assert async_to_sync(count)() == 4
