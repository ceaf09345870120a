from django.apps import AppConfig


class AccountsConfig(AppConfig):
    name = "trimops.accounts"
    label = "accounts"
