"""A client of the API for programs in Python. It knows nothing of the server but its description."""
