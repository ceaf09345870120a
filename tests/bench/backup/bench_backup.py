"""What a backup costs beside a plain copy of the same bytes, and the drill in full: eight write while it is made."""

# isort: off
from tests.bench.embedded_site import embedded_site
# isort: on

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from django.db import connection

from farms.models import Cow, HerdImport
from tests.bench.invoicing.bench_issue_kills import ROOT, on_servers
from tests.factories import NOON, House, make_house
from trimops.backup.disk import flush_file, megabytes
from trimops.backup.make_backup import make_backup
from trimops.backup.place import place_of_sqlite
from trimops.backup.restore_backup import restore_backup

COWS, LISTS = 200_000, 300
DRILL = "tests/trimops/backup/test_backup_drill.py"


@dataclass
class Cost:
    """Seconds, and what it was about."""

    rows: int
    size: int
    plain: float
    open: float
    untried: float
    sealed: float
    restored: float

    def __str__(self) -> str:
        return (
            f"  {self.rows:,} rows, {megabytes(self.size)}: plain copy {self.plain:.2f} s; backup {self.open:.1f} s "
            f"({self.open / self.plain:.0f} times), not tried out {self.untried:.1f} s, sealed {self.sealed:.1f} s; "
            f"restored {self.restored:.1f} s"
        )


def fill(house: House, cows: int, lists: int) -> None:
    """Many small rows, and some that are half a megabyte of bytes nobody can press together."""
    rows = (Cow(business=house.business, farm=house.farm, number=f"H{n}") for n in range(cows))
    Cow.objects.bulk_create(rows, batch_size=5000)
    for n in range(lists):
        HerdImport.objects.create(
            business=house.business,
            farm=house.farm,
            file_name=f"{n}.csv",
            content=os.urandom(500_000),
            uploaded_at=NOON,
            uploaded_by=house.owner,
        )


def measure(path: Path, folder: Path) -> Cost:
    """Of the database in the file `path`, which nobody writes to."""
    place = place_of_sqlite(path, path.parent)

    def backup(name: str, **changes: object) -> Callable[[], Path]:
        words = {"place": place, "to": folder / name, "at": datetime.now(UTC), "program": "0.1.0", **changes}
        return lambda: make_backup(**words)

    plain, _ = timed(lambda: plain_copy(path, folder / "copy"))
    opened, made = timed(backup("open"))
    untried, _ = timed(backup("untried", is_tried_out=False))
    sealed, _ = timed(backup("sealed", key="nine sound cows in a crush"))
    target = place_of_sqlite(folder / "new" / "trimops.sqlite3", folder / "new")
    restored, _ = timed(lambda: restore_backup(file=made.path, place=target))
    return Cost(made.manifest.contents.rows, path.stat().st_size, plain, opened, untried, sealed, restored)


def plain_copy(path: Path, to: Path) -> None:
    shutil.copyfile(path, to)
    flush_file(to)


def timed(call: Callable[[], object]) -> tuple[float, object]:
    began = time.perf_counter()
    outcome = call()
    return time.perf_counter() - began, outcome


def main() -> None:
    with embedded_site(), tempfile.TemporaryDirectory(prefix="trimops-bench-") as folder:
        fill(make_house(), COWS, LISTS)
        connection.close()
        cost = measure(Path(str(connection.settings_dict["NAME"])), Path(folder))
    print(cost)
    drill = [sys.executable, "-m", "pytest", "-q", "-s", "-p", "no:cacheprovider", "--nomigrations", DRILL]
    subprocess.run(drill, cwd=ROOT, env={**os.environ, "TRIMOPS_HERD": "100000"}, check=True)
    on_servers(DRILL, TRIMOPS_HERD=100_000)


if __name__ == "__main__":
    main()
