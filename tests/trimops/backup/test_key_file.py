"""The key comes from a file or from the settings, and an empty file is none."""

import pytest

from trimops.backup.errors import WrongKey
from trimops.backup.key_file import key_from


def test_the_file_goes_before_the_setting(tmp_path):
    (tmp_path / "key").write_text("nine sound cows\n")
    assert key_from(str(tmp_path / "key"), "the setting") == "nine sound cows"
    assert key_from(None, "the setting") == "the setting"
    assert key_from(None, "") is None


@pytest.mark.parametrize("content", [b"", b"\n", b"\xff\xfe\x00"])
def test_a_file_without_a_key_is_refused(tmp_path, content):
    (tmp_path / "key").write_bytes(content)
    with pytest.raises(WrongKey):
        key_from(str(tmp_path / "key"), "the setting")


def test_a_file_that_is_not_there_is_refused(tmp_path):
    with pytest.raises(WrongKey, match="cannot be read"):
        key_from(str(tmp_path / "nowhere"), "the setting")
