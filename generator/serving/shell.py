"""What the engine puts round the pages of the preview: laid out once, and kept for what an edit makes new."""

import re
import shutil
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from generator.outputs.frames import Frame, Sort, frame_of, model_page, proof_pages, sort_of
from generator.outputs.page import SitePage, heads_of, join_sections, page_path
from generator.outputs.policy import write_policy
from generator.outputs.site import Site
from generator.publishing.engine import run_engine

SCRIPTS = ("_newel/preview.js", "_newel/beside.js")
VERSION = "nwpreviewversion"  # a mark in a page, for the number of the build that it shows
_ARTICLE = re.compile(r'(<article class="md-content__inner md-typeset">).*?(</article>)', re.DOTALL)
_POLICY = re.compile(r'\n<meta http-equiv="Content-Security-Policy"[^>]*>')


@dataclass(frozen=True)
class Shell:
    """The engine's files in a folder, and a frame for each sort of page that it need not lay out itself.

    `look` is what stands on every page; `heads` of each page that it laid out, by path.
    """

    folder: Path
    look: tuple[object, ...] = ()
    frames: Mapping[Sort, Frame] | None = None
    heads: Mapping[str, tuple[object, ...]] | None = None

    def suits(self, site: Site) -> bool:
        """Whether all that stands on every page is as it was."""
        return self.look == _look(site)

    def fits(self, page: SitePage) -> bool:
        """Whether the page can be shown without the engine."""
        if (self.frames or {}).get(sort_of(page)):  # type: ignore[arg-type]
            return True
        return (self.heads or {}).get(page_path(page.address)) == _heads(page)

    def around(self, page: SitePage) -> str:
        """The whole page."""
        frame = (self.frames or {}).get(sort_of(page))  # type: ignore[arg-type]
        if frame:
            return frame.around(page)
        path = page_path(page.address)
        html = (self.folder / path).read_text(encoding="utf-8")
        body = join_sections(page)
        return dress(_ARTICLE.sub(lambda found: f"{found[1]}\n{body}\n{found[2]}", html, count=1), path)


def lay_shell(site: Site, folder: Path) -> Shell:
    """Run the engine for the pages of the navigation and one of each sort; for all where that will not do."""
    proofs = proof_pages(site.pages)
    models = {sort: model_page(sort) for sort in proofs}
    proved = {page.address for page in proofs.values()}
    laid = tuple(page for page in site.pages if page.address in proved or sort_of(page) is None)
    _run(replace(site, pages=(*laid, *models.values())), folder)
    frames: dict[Sort, Frame] = {}
    for sort, model in models.items():
        frame = frame_of(model, _dressed(folder, model))
        if frame is None or frame.around(proofs[sort]) != _dressed(folder, proofs[sort]):
            return _lay_all(site, folder)
        frames[sort] = frame
    return Shell(folder, _look(site), frames, {page_path(page.address): _heads(page) for page in laid})


def _lay_all(site: Site, folder: Path) -> Shell:
    shutil.rmtree(folder)
    _run(site, folder)
    return Shell(folder, _look(site), {}, {page_path(page.address): _heads(page) for page in site.pages})


def _run(site: Site, folder: Path) -> None:
    run_engine(replace(site, files=()), folder, None, None, frames=False)  # files are not asked of the engine


def dress(html: str, path: str) -> str:
    """A page of the engine with the preview's scripts, and a policy for all of it together."""
    up = "../" * path.count("/")
    scripts = "".join(f'<script src="{up}{script}" data-version="{VERSION}"></script>' for script in SCRIPTS)
    return write_policy(_POLICY.sub("", html).replace("</body>", f"{scripts}</body>", 1))


def _dressed(folder: Path, page: SitePage) -> str:
    path = page_path(page.address)
    return dress((folder / path).read_text(encoding="utf-8"), path)


def _look(site: Site) -> tuple[object, ...]:
    listed = tuple((page.address, page.title) for page in site.pages if page.listed)
    return site.name, site.language, site.draft, listed


def _heads(page: SitePage) -> tuple[object, ...]:
    """What the engine puts round a body: title and contents list."""
    return page.title, heads_of(page)
