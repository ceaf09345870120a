from django.apps import AppConfig


class ApiConfig(AppConfig):
    """What every address under /api/v1/ shares."""

    name = "trimops.api"
    default_auto_field = "django.db.models.BigAutoField"
