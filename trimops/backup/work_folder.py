"""A private folder for what is being packed or unpacked, and a lock so that only one backup or restore runs."""

import fcntl
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from trimops.backup.errors import BackupProblem

LOCK = ".backup-lock"
WORK = ".backup-work-"


@contextmanager
def work_folder(data_dir: Path) -> Iterator[Path]:
    """A new folder in `data_dir` for the owner alone, gone afterwards.

    In the data folder, because the data lies there in the clear anyway: a sealed backup leaves nothing open
    where it is kept. BackupProblem where another one is running; what a killed one left is cleared away.
    """
    data_dir.mkdir(parents=True, exist_ok=True)
    with (data_dir / LOCK).open("a") as lock:
        os.chmod(lock.name, 0o600)
        try:
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            raise BackupProblem("Another backup or restore is running here: wait until it is done.") from None
        for left in data_dir.glob(f"{WORK}*"):
            shutil.rmtree(left, ignore_errors=True)
        work = Path(tempfile.mkdtemp(prefix=WORK, dir=data_dir))
        try:
            yield work
        finally:
            shutil.rmtree(work, ignore_errors=True)
