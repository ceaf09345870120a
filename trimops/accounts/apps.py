from django.apps import AppConfig
from django.core import checks

from trimops.accounts.checks import nobody_comes_from_elsewhere_without_https, stolen_passwords_can_be_read


class AccountsConfig(AppConfig):
    name = "trimops.accounts"
    label = "accounts"

    def ready(self) -> None:
        checks.register(stolen_passwords_can_be_read, checks.Tags.security)
        checks.register(nobody_comes_from_elsewhere_without_https, checks.Tags.security)
