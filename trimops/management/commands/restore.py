"""`manage.py restore FILE --into-empty`: bring a backup back into an empty database and data folder."""

from argparse import ArgumentParser
from pathlib import Path

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError
from django.db import connections

from trimops.backup.data_files import SECRET_KEY
from trimops.backup.errors import BackupProblem
from trimops.backup.key_file import key_from
from trimops.backup.manifest import Manifest
from trimops.backup.place import place_of_settings
from trimops.backup.program import Program, this_program
from trimops.backup.restore_backup import restore_backup

NO_SIGNING_KEY = (
    "The backup holds no signing key: set TRIMOPS_SECRET_KEY as it was, else everybody signs in anew and links that "
    "were mailed no longer work."
)


class Command(BaseCommand):
    help = "Brings a backup back into an empty database and data folder, and proves that nothing is missing."
    requires_system_checks = []  # because: there is no database yet that could be checked

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("file", help="a file that `manage.py backup` made")
        parser.add_argument(
            "--into-empty",
            action="store_true",
            required=True,
            help="said aloud: nothing is ever written over",
        )
        parser.add_argument("--key-file", metavar="FILE", help="the words that it was sealed with")

    def handle(self, *args: object, file: str, key_file: str | None, **options: object) -> None:
        connections.close_all()
        program = this_program()
        try:
            manifest = restore_backup(
                file=Path(file),
                place=place_of_settings(),
                key=key_from(key_file, settings.BACKUP_KEY),
                accept=program.refuse_newer,
            )
        except BackupProblem as problem:
            raise CommandError(problem.message) from problem
        self._say(manifest, program)

    def _say(self, manifest: Manifest, program: Program) -> None:
        told = manifest.contents
        for name, table in sorted(told.tables.items()):
            if table.rows:
                self.stdout.write(f"{table.rows:>10,}  {name}")
        self.stdout.write(
            f"Restored what was taken down at {manifest.made_at:%Y-%m-%d %H:%M:%S} UTC by trimops {manifest.program}: "
            f"{told.rows:,} rows and {len(manifest.files)} files, each table and file proven to be the same."
        )
        if awaited := program.awaited(manifest):
            self.stdout.write(f"This trimops is newer ({awaited} migrations): now run `manage.py migrate`.")
        # Where the key comes from the environment, starting the program has made no file of it.
        if SECRET_KEY not in manifest.files and (settings.DATA_DIR / SECRET_KEY).exists():
            self.stdout.write(NO_SIGNING_KEY)
