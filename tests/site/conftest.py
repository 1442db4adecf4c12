"""A published sample site, made once for all tests that look at it."""

from pathlib import Path

import pytest

from tests.site.sample_site import write_sample


@pytest.fixture(scope="session")
def sample_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the sample site."""
    return write_sample(tmp_path_factory.mktemp("sample"))
