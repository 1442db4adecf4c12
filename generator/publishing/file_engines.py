"""Engines that get the pages as files and run beside this process: ProperDocs and Zensical."""

import importlib.util
import json
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from mkdocs.config import load_config

from generator.outputs.look import FAVICON, FEATURES, LOGO, THEME_FOLDER, palette
from generator.outputs.offline import WORKER
from generator.outputs.policy import write_policy
from generator.outputs.search import SEPARATOR, add_entries, add_items, script_form
from generator.outputs.site import Site
from generator.problems import NewelError
from generator.publishing.offline_files import write_offline_files
from generator.publishing.search_files import write_index
from generator.publishing.written_form import write_pages

FILE_ENGINES = ("properdocs", "zensical")
_CONFIG = "newel-pages.yml"


def run_file_engine(
    engine: str, site: Site, folder: Path, config_path: Path | None, offline: bool = False
) -> None:
    """Build the site into a folder from written pages.

    Pages, navigation, look, scripts, search entries, the content policy and what a device keeps are the same
    as with MkDocs. The pages of an `offline` copy say of which day they are. Raises NewelError
    "engine-missing", "engine-failed".
    """
    if importlib.util.find_spec(engine) is None:
        raise NewelError(
            "engine-missing",
            f"{engine} is not installed",
            "the pages are laid out by a program of its own",
            "run `pip install 'newel[engines]'`, or build with --engine mkdocs",
        )
    with tempfile.TemporaryDirectory() as work:
        home = Path(work)
        _write_sources(site, home, config_path, offline)
        _run(engine, home)
        shutil.copytree(home / "site", folder)
    _finish(engine, site, folder, offline)


def _write_sources(site: Site, home: Path, config_path: Path | None, offline: bool) -> None:
    docs = home / "docs"
    docs.mkdir()
    settings = _settings(site, offline)
    if config_path is not None:
        lab = load_config(str(config_path))
        shutil.copytree(lab.docs_dir, docs, dirs_exist_ok=True)
        settings.update({"site_url": lab.site_url} if lab.site_url else {})
    written = sorted((path.relative_to(docs).as_posix() for path in docs.rglob("*.md")), key=_index_first)
    write_pages(site, docs)
    settings["nav"] = [*_listed(site), *([{"For instructors": written}] if written else [])]
    # JSON is YAML, and a name with signs in it needs no care.
    (home / _CONFIG).write_text(json.dumps(settings), encoding="utf-8")


def _settings(site: Site, offline: bool) -> dict[str, object]:
    """What the plugin sets for MkDocs."""
    return {
        "site_name": _in_html(site.name),
        "docs_dir": "docs",
        "site_dir": "site",
        "use_directory_urls": False,
        "theme": {
            "name": "material",
            "variant": "classic",  # Zensical's look that is the theme's of MkDocs
            "custom_dir": str(THEME_FOLDER),
            "font": False,
            "language": site.language.partition("-")[0],
            "features": list(FEATURES),
            "palette": palette(),
            "icon": {"logo": LOGO},
            "favicon": FAVICON,
        },
        "plugins": [{"search": {"separator": SEPARATOR}}],
        "markdown_extensions": ["attr_list", "tables", "admonition", {"toc": {"title": "On this page"}}],
        "extra_css": ["assets/newel.css"],
        "extra_javascript": ["assets/newel.js"],
        "extra": {
            "generator": False,
            "draft": site.draft,
            "offline": "" if offline else WORKER,
            "copied": site.date if offline else "",
        },
    }


def _in_html(name: str) -> str:
    """A name that the theme inserts as HTML in some places and escapes in others."""
    return name.replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")


def _listed(site: Site) -> list[str]:
    """The pages of the navigation; the others are reached by them, so that no page lists every other."""
    return [f"{page.address}/index.md".lstrip("/") for page in site.pages if page.listed]


def _index_first(path: str) -> tuple[bool, str]:
    return (not path.endswith("index.md"), path)


def _run(engine: str, home: Path) -> None:
    strict = ["--strict"] if engine == "properdocs" else []
    done = subprocess.run(
        [sys.executable, "-m", engine, "build", "-f", _CONFIG, *strict],
        cwd=home, capture_output=True, text=True, check=False,
        env={**os.environ, "NO_MKDOCS_2_WARNING": "1"},
    )  # fmt: skip
    if done.returncode or not (home / "site" / "index.html").is_file():
        said = (done.stderr or done.stdout).strip()
        what = f"{engine} could not lay the pages out:\n{said}"
        raise NewelError("engine-failed", what, hint="The last site stands as it was.")


def _finish(engine: str, site: Site, folder: Path, offline: bool) -> None:
    """The content policy in every page, our entries in the engine's search index, what a device keeps."""
    for path in folder.rglob("*.html"):
        # Zensical's script sets the looks of its search dialog by a style of its own.
        text = write_policy(path.read_text(encoding="utf-8"), own_styles=engine == "zensical")
        path.write_text(text, encoding="utf-8")
    index, other = folder / "search" / "search_index.json", folder / "search.json"
    if index.is_file():
        write_index(index.parent, add_entries(index.read_text(encoding="utf-8"), site.entries))
    if other.is_file():
        text = add_items(other.read_text(encoding="utf-8"), site.entries)
        other.write_text(text, encoding="utf-8")
        other.with_suffix(".js").write_text(script_form(text), encoding="utf-8")
    if not offline:
        write_offline_files(folder, site.name)
