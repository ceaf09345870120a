from django.apps import AppConfig


class WebConfig(AppConfig):
    name = "trimops.web"
    label = "web"
