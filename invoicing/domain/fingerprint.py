"""What a document that is kept is known by."""

import hashlib


def fingerprint(document: bytes) -> str:
    """SHA-256 in hex; empty for a document that is not there."""
    return hashlib.sha256(document).hexdigest() if document else ""
