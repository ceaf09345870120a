from threading import Event, Thread

from visits.domain.planning.compiled import compiled


def count_up(most: int) -> int:
    total = 0
    for each in range(most):
        total += each % 7
    return total


def test_a_compiled_function_gives_what_the_plain_one_gives_and_lets_other_threads_run():
    fast, done = compiled(count_up), Event()
    assert fast(1000) == count_up(1000)
    thread = Thread(target=lambda: (fast(10**8), done.set()))
    thread.start()
    turns = 0
    while not done.is_set():
        turns += 1
    thread.join()
    assert turns > 10
