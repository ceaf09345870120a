from django.apps import AppConfig


class PortalConfig(AppConfig):
    name = "trimops.portal"
    label = "portal"
