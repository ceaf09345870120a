from typing import Any

from django.core.management.base import BaseCommand

from trimops.api.description import DESCRIPTION, description_text


class Command(BaseCommand):
    help = "Write the description of the API (trimops/api/openapi.json) anew from the code."

    def handle(self, *args: Any, **options: Any) -> None:
        DESCRIPTION.write_text(description_text(), encoding="utf-8")
        self.stdout.write(f"{DESCRIPTION} written.")
