from django.apps import AppConfig


class OutboxConfig(AppConfig):
    name = "trimops.outbox"
    label = "outbox"
