"""`manage.py stuck_errands [--again]`: what got stuck, over all businesses, for whoever runs the site."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand

from trimops.errands.models import Errand
from trimops.errands.selectors.stuck_errands import all_stuck
from trimops.errands.services.try_again import NotStuck, try_again


class Command(BaseCommand):
    help = "Lists the errands of all businesses that were tried in vain; with --again it has them tried once more."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument(
            "--again", action="store_true", help="have each tried once more, all its tries before it"
        )

    def handle(self, *args: object, again: bool, **options: object) -> None:
        rows = all_stuck()
        for errand in rows:
            said = f"{errand.pk} business {errand.business_id} {errand.job} {errand.ids}"
            self.stdout.write(
                f"{said} {errand.ended_at:%Y-%m-%d %H:%M}Z, {errand.tries} tries: {errand.last_words}"
            )
        self.stdout.write(f"{len(rows)} stuck")
        if again:
            self.stdout.write(f"{_tried_again(rows)} are tried again")


def _tried_again(rows: list[Errand]) -> int:
    count = 0
    for errand in rows:
        try:
            try_again(errand=errand)
            count += 1
        except NotStuck:
            # Its owner was quicker.
            continue
    return count
