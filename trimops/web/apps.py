from django.apps import AppConfig
from django.core.validators import MaxValueValidator, MinValueValidator
from django.forms import Field


class WebConfig(AppConfig):
    name = "trimops.web"
    label = "web"

    def ready(self) -> None:
        # What is wrong with a field is said as what to do.
        Field.default_error_messages["required"] = "Fill this in."
        MinValueValidator.message = "Write %(limit_value)s or more."
        MaxValueValidator.message = "Write %(limit_value)s or less."
