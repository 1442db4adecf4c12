"""A picture changed after posting: told as a change, and shown only once it is posted."""

from pathlib import Path

import pytest

from generator.outputs.page import join_sections
from generator.outputs.site import Site
from generator.pipeline import build_site
from generator.pipeline.posted_pictures import picture_digest
from generator.pipeline.posting import Wish
from generator.publishing.files import keep_file
from tests.posting import labs

EDIT = "change in {picture: {file: tray.svg, alt: the plate hangs free}}"
OLD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 4"><path d="M0 0h4"/></svg>'
NEW = OLD.replace("M0 0h4", "M0 0v4")


@pytest.fixture
def lab(tmp_path: Path) -> Path:
    """A lab whose first issue shows a picture, which is another one by now."""
    folder = tmp_path / "procedures"
    labs.write(folder, edit=EDIT)
    (folder / "pictures").mkdir()
    (folder / "pictures" / "tray.svg").write_text(OLD)
    made = labs.posted(folder)
    for source, kept in made.pictures:
        keep_file(folder / source, folder / kept)
    (folder / "pictures" / "tray.svg").write_text(NEW)
    return folder


def site_of(folder: Path, draft: bool = False) -> Site:
    site = build_site(folder, labs.DAY, draft, "procedures").site
    assert site is not None
    return site


def figure(site: Site) -> str:
    body = next(join_sections(page) for page in site.pages if page.address == f"procedures/{labs.ID}")
    return body.partition('<figure class="nw-picture">')[2].partition("</figure>")[0]


def test_an_issue_names_file_and_digest_and_the_picture_is_kept(lab: Path) -> None:
    text = (lab / "posted" / labs.ID / "1.yml").read_text()
    kept = next((lab / "posted" / "pictures").iterdir())
    assert kept.read_text() == OLD
    assert f"tray.svg: {kept.stem}" in text


def test_another_picture_is_told_as_a_change_of_its_step(lab: Path) -> None:
    (change,) = labs.compared(lab).changes
    assert change.text == "picture tray.svg: is another picture"
    assert (change.change.group, change.steps, change.cards) == ("wording", ("in",), ())


def test_the_page_shows_the_posted_picture_until_the_new_one_is_posted(lab: Path) -> None:
    site = site_of(lab)
    path = next(file.path for file in site.files if file.content == OLD.encode())
    assert path in figure(site)
    assert "pictures/tray.svg" in figure(site_of(lab, draft=True))
    labs.posted(lab, Wish("A clearer picture", "technician"))
    assert "pictures/tray.svg" in figure(site_of(lab))


def test_a_picture_that_went_from_the_folder_stays_with_its_issue(lab: Path) -> None:
    labs.write(lab)
    (lab / "pictures" / "tray.svg").unlink()
    site = site_of(lab)
    assert any(file.content == OLD.encode() for file in site.files)
    assert "the plate hangs free" in figure(site)


def test_without_the_kept_file_the_words_remain(lab: Path) -> None:
    for kept in (lab / "posted" / "pictures").iterdir():
        kept.unlink()
    shown = figure(site_of(lab))
    assert "<img" not in shown
    assert "the plate hangs free (The picture of this issue was not kept.)" in shown


def test_a_kept_picture_altered_by_hand_is_noticed(lab: Path) -> None:
    kept = next((lab / "posted" / "pictures").iterdir())
    kept.write_text(NEW)
    _, checked = labs.opened(lab)
    found = [problem for problem in checked.problems if problem.rule == "issue-altered"]
    assert [problem.where.file for problem in found] == [f"procedures/posted/pictures/{kept.name}"]


def test_line_ends_of_another_system_make_no_other_picture() -> None:
    two = OLD.replace("><", ">\n<").encode()
    assert picture_digest(two) == picture_digest(two.replace(b"\n", b"\r\n"))
    photo = b"\xff\xd8\xff\xe0\0\x10JFIF\r\n"
    assert picture_digest(photo) != picture_digest(photo.replace(b"\r\n", b"\n"))
