import pytest

from tests.trimops.errands.errand_hands import now_of, set_work, written
from trimops.errands.services.try_again import NotStuck, try_again


@pytest.mark.django_db(transaction=True)
def test_it_is_done_at_once_with_all_its_tries_before_it(monkeypatch):
    calls = set_work(monkeypatch, lambda time: None)
    errand = written(state="stuck", tries=8, ids={"visit_id": 7}, last_words="ValueError: no", is_fault=True)
    try_again(errand=errand)
    row = now_of(errand)
    assert (row.state, row.tries, row.last_words, row.is_fault) == ("done", 1, "", False)
    assert calls == [{"visit_id": 7}]


@pytest.mark.django_db(transaction=True)
def test_one_that_fails_again_waits_and_is_not_stuck_at_once(monkeypatch):
    set_work(monkeypatch, lambda time: 1 / 0)
    errand = written(state="stuck", tries=8)
    try_again(errand=errand)
    assert (now_of(errand).state, now_of(errand).tries) == ("waiting", 1)


@pytest.mark.django_db
@pytest.mark.parametrize("state", ["waiting", "under_way", "done"])
def test_what_is_not_stuck_is_refused(state):
    with pytest.raises(NotStuck, match="not stuck any more"):
        try_again(errand=written(state=state))
