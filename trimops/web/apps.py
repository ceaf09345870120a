from django.apps import AppConfig
from django.forms import Field


class WebConfig(AppConfig):
    name = "trimops.web"
    label = "web"

    def ready(self) -> None:
        # What is wrong with an empty field is said as what to do.
        Field.default_error_messages["required"] = "Fill this in."
