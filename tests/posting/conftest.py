"""The small lab with its first issue, made once."""

from pathlib import Path

import pytest

from tests.posting import labs


@pytest.fixture(scope="session")
def first_issue(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the lab and its first issue; copy it before you change anything."""
    folder = tmp_path_factory.mktemp("posted") / "procedures"
    labs.write(folder)
    labs.posted(folder)
    return folder
