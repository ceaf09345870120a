import pytest

from tests.factories import make_house


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def data_folder(settings, tmp_path):
    """A folder of its own for what is noted outside the database."""
    settings.DATA_DIR = tmp_path
    return tmp_path
