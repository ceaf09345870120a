"""The bench of backups in its smallest form: it times what it counts."""

from django.db import connection

from tests.bench.backup.bench_backup import Cost, fill, measure
from tests.factories import make_house


def test_it_backs_up_what_it_filled(transactional_db, tmp_path):
    fill(make_house(), cows=50, lists=1)
    if connection.vendor != "sqlite":
        return
    path = tmp_path / "data" / "trimops.sqlite3"
    path.parent.mkdir()
    with connection.cursor() as cursor:
        cursor.execute("VACUUM INTO %s", [str(path)])
    cost = measure(path, tmp_path)
    assert cost.rows > 50
    assert cost.size > 500_000
    assert min(cost.plain, cost.open, cost.untried, cost.sealed, cost.restored) > 0


def test_it_says_how_many_times_a_plain_copy_it_took():
    said = str(Cost(1000, 2_000_000, 0.5, 2.0, 1.0, 3.0, 1.5))
    assert "1,000 rows, 2.0 MB: plain copy 0.50 s; backup 2.0 s (4 times)" in said
