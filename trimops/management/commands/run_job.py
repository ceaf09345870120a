"""`manage.py run_job NAME key=1`: do one background job now, in this process."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand, CommandError

from trimops.jobs import Job, run_here


class Command(BaseCommand):
    help = "Does one background job now and ends when it is done."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("job", choices=[job.value for job in Job])
        parser.add_argument("ids", nargs="*", metavar="name=number", help="what the job is about")

    def handle(self, *args: object, job: str, ids: list[str], **options: object) -> None:
        run_here(Job(job), dict(_id_of(word) for word in ids))


def _id_of(word: str) -> tuple[str, int]:
    name, _, number = word.partition("=")
    if not name.isidentifier() or not number.isdecimal():
        raise CommandError(f"'{word}' is not of the form name=number.")
    return name, int(number)
