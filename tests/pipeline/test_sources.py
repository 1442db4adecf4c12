"""Each step of a page leads to its line in the author's file, where it is known how to get there."""

import re
from pathlib import Path

import pytest

from generator.cli.init import FILES
from generator.outputs.page import join_sections
from generator.pipeline import build_site
from tests.posting import labs

_LINK = re.compile(r'<p class="nw-source"><a href="([^"]+)"')


@pytest.fixture
def lab(tmp_path: Path) -> Path:
    """The small lab under a mkdocs.yml that names a forge."""
    labs.write(tmp_path / "procedures")
    (tmp_path / "mkdocs.yml").write_text("repo_url: https://github.com/me/lab\n", "utf-8")
    return tmp_path / "procedures"


def page(folder: Path, **wishes: bool) -> str:
    """The body of the procedure's page."""
    site = build_site(folder, labs.DAY, shown="procedures", **wishes).site  # type: ignore[arg-type]
    assert site is not None
    return next(join_sections(page) for page in site.pages if page.address == f"procedures/{labs.ID}")


def test_every_step_leads_to_its_line(lab: Path) -> None:
    lines = (lab / f"{labs.ID}.yml").read_text("utf-8").splitlines()
    links = _LINK.findall(page(lab))
    steps = labs.opened(lab)[0].procedures[labs.ID].procedure.steps
    assert len(links) == len(steps)
    for link, step in zip(links, steps, strict=True):
        address, _, line = link.partition("#L")
        assert address == f"https://github.com/me/lab/edit/main/procedures/{labs.ID}.yml"
        assert f"id: {step.id}" in lines[int(line) - 1]


def test_in_a_preview_file_and_line_are_said(lab: Path) -> None:
    body = page(lab, draft=True, preview=True)
    assert _LINK.findall(body) == []
    assert f'<p class="nw-source"><code>procedures/{labs.ID}.yml:' in body


def test_where_nothing_is_set_nothing_is_shown(lab: Path) -> None:
    (lab.parent / "mkdocs.yml").write_text("site_name: x\n", "utf-8")
    assert "nw-source" not in page(lab)


def test_a_posted_step_is_found_by_the_id_it_has_now(lab: Path) -> None:
    labs.posted(lab)
    labs.write(lab, edit="change blow {id: dry-it, was: blow, takes: 5 min}")
    lines = (lab / f"{labs.ID}.yml").read_text("utf-8").splitlines()
    posted = next(part for part in page(lab).split('data-nw-step="') if part.startswith("blow"))
    found = _LINK.search(posted)
    assert found is not None
    assert "id: dry-it" in lines[int(found[1].partition("#L")[2]) - 1]


def test_the_recipes_of_a_new_lab_name_their_forge() -> None:
    home = Path(__file__).parents[2] / "generator" / "cli" / "starter"
    for source, target in FILES:
        if target in (".github/workflows/lab.yml", ".gitlab-ci.yml"):
            text = (home / source).read_text("utf-8")
            assert "LAB_REPO_URL: " in text
            assert "LAB_EDIT_URI: " in text
