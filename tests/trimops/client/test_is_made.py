"""The generated part of the client is what the description says now."""

from tests.trimops.client.making import FOLDER, made


def test_the_client_is_not_behind_the_description():
    behind = [name for name, text in made().items() if (FOLDER / name).read_text() != text]
    assert not behind, "run: make client"
