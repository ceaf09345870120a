"""Addresses that are their own key: chance enough that nobody guesses one, and only its hash is kept."""

import hashlib
import secrets


def new_secret() -> str:
    """256 bits of chance, fit for an address."""
    return secrets.token_urlsafe(32)


def hash_of(secret: str) -> str:
    """SHA-256 in hex; the secret is random, so it needs no salt."""
    return hashlib.sha256(secret.encode()).hexdigest()
