"""The demo lab's site, built once by the real command for all tests that look at it."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def build_demo(parent: Path) -> Path:
    """Copy what the site is made from, run `newel build` on it, and give the site's folder."""
    for name in ("procedures", "site_src"):
        shutil.copytree(ROOT / name, parent / name)
    shutil.copy(ROOT / "mkdocs.yml", parent / "mkdocs.yml")
    newel = Path(sys.executable).with_name("newel")
    done = subprocess.run([newel, "build"], cwd=parent, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return parent / "site"


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the demo lab's site."""
    return build_demo(tmp_path_factory.mktemp("demo"))
