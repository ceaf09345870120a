"""`manage.py backup`: one file with the database and the data folder, made while the site works, and tried out."""

from argparse import ArgumentParser
from datetime import UTC, datetime
from pathlib import Path

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError

from trimops.backup.disk import megabytes
from trimops.backup.errors import BackupProblem
from trimops.backup.key_file import key_from
from trimops.backup.make_backup import BackupMade, make_backup
from trimops.backup.names import BackupFile, BackupState, backups_in
from trimops.backup.place import place_of_settings
from trimops.backup.program import this_program
from trimops.backup.retention import Keep

NOT_KEPT_LONG = (
    "Give --keep-days, --keep-weeks or --keep-months only to a backup that is tried out (no --no-verify)."
)


class Command(BaseCommand):
    help = "Backs the database and the data folder up into one file, restores it for a trial, and says what it holds."
    requires_system_checks = []  # because: a backup is made whatever else is wrong

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--to", metavar="DIR", help="where to (default: TRIMOPS_BACKUP_DIR)")
        parser.add_argument("--key-file", metavar="FILE", help="seal it with the words in this file")
        for span in ("days", "weeks", "months"):
            parser.add_argument(
                f"--keep-{span}", type=int, metavar="N", help=f"keep the last of each of N {span}"
            )
        parser.add_argument("--no-verify", action="store_true", help="do not restore it for a trial")
        parser.add_argument(
            "--list", nargs="?", const="", metavar="DIR", help="only show the backups there are"
        )

    def handle(
        self,
        *args: object,
        to: str | None,
        key_file: str | None,
        list: str | None,
        no_verify: bool,
        **options: object,
    ) -> None:
        if list is not None:
            self._show(Path(list or settings.BACKUP_DIR))
            return
        keep = _keep(options)
        if keep and no_verify:
            raise CommandError(NOT_KEPT_LONG)
        began = datetime.now(UTC)
        try:
            made = make_backup(
                place=place_of_settings(),
                to=Path(to or settings.BACKUP_DIR),
                at=began,
                program=this_program().version,
                key=key_from(key_file, settings.BACKUP_KEY),
                keep=keep,
                is_tried_out=not no_verify,
            )
        except BackupProblem as problem:
            raise CommandError(problem.message) from problem
        self._say(made, (datetime.now(UTC) - began).total_seconds())

    def _say(self, made: BackupMade, seconds: float) -> None:
        told = made.manifest.contents
        self.stdout.write(
            f"{made.path}: {megabytes(made.path.stat().st_size)}, {len(told.tables)} tables with {told.rows:,} rows, "
            f"{len(made.manifest.files)} files, {seconds:.1f} s"
        )
        tried = "Restored for a trial: every table and file is the same."
        self.stdout.write(tried if made.state is BackupState.VERIFIED else "Not tried out.")
        for path in made.dropped:
            self.stdout.write(f"Dropped {path.name}.")
        for path in made.left_out:
            self.stderr.write(f"Not in the backup: {path} is a link to a folder.")

    def _show(self, folder: Path) -> None:
        found = backups_in(folder)
        for told in found:
            self.stdout.write(_line(told))
        self.stdout.write(f"{len(found)} in {folder}.")


def _line(told: BackupFile) -> str:
    sealed = "sealed" if told.is_sealed else "open"
    size = megabytes(told.path.stat().st_size)
    return f"{told.stamp:%Y-%m-%d %H:%M:%S} UTC  {size:>12}  {sealed:6}  {told.state:10}  {told.path.name}"


def _keep(options: dict[str, object]) -> Keep | None:
    """What is to be kept; None where nobody said so, and then all is."""
    asked = {
        span: number
        for span in ("days", "weeks", "months")
        if (number := options[f"keep_{span}"]) is not None
    }
    try:
        return Keep(**{span: int(str(number)) for span, number in asked.items()}) if asked else None
    except ValueError as error:
        raise CommandError(str(error)) from error
