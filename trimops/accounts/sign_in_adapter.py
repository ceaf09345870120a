"""How the sign-in library behaves here: nobody signs up by themselves, people are invited."""

from allauth.account.adapter import DefaultAccountAdapter
from django.http import HttpRequest


class SignInAdapter(DefaultAccountAdapter):  # type: ignore[misc]
    """Sign-up is closed; an account begins with an invitation."""

    def is_open_for_signup(self, request: HttpRequest) -> bool:
        return False
