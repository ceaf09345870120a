from django.apps import AppConfig


class ErrandsConfig(AppConfig):
    name = "trimops.errands"
    label = "errands"
