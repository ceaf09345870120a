from django.apps import AppConfig
from django.core import checks

from trimops.tenancy.checks import every_model_is_walled


class TenancyConfig(AppConfig):
    name = "trimops.tenancy"
    label = "tenancy"

    def ready(self) -> None:
        checks.register(every_model_is_walled, checks.Tags.models)
