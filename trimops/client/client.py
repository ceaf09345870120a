"""The client: every operation of the API as a method, with typed bodies."""

from trimops.client.operations import Operations


class Client(Operations):
    """See `Calls` for how it is made and what it does by itself."""
