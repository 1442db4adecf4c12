"""Published sites, each made once for all tests that look at it."""

from pathlib import Path

import pytest

from tests.site.calculator_pages import PROCEDURE, LabSite
from tests.site.lab_site import write_lab_site
from tests.site.sample_site import write_sample


@pytest.fixture(scope="session")
def sample_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the sample site."""
    return write_sample(tmp_path_factory.mktemp("sample"))


@pytest.fixture(scope="session")
def calculator_site(tmp_path_factory: pytest.TempPathFactory) -> LabSite:
    """Every calculator of the demo lab, and one procedure that works with them."""
    folder = tmp_path_factory.mktemp("calculators")
    lab = Path(__file__).parents[2] / "procedures"
    return write_lab_site(lab, folder, lambda at: at.startswith("calculators") or at == PROCEDURE)
