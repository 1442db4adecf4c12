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

from generator.outputs.policy import write_policy
from generator.outputs.search import add_entries, script_form
from generator.outputs.site import Site
from generator.problems import NewelError
from generator.publishing.written_form import write_pages

FILE_ENGINES = ("properdocs", "zensical")
_CONFIG = "newel-pages.yml"


def run_file_engine(engine: str, site: Site, folder: Path, config_path: Path | None) -> None:
    """Build the site into a folder from written pages.

    Pages, ids, links, styles, scripts and the content policy are the same as with MkDocs; the changes to
    the theme itself are not, and Zensical's search knows its own index only. Raises NewelError
    "engine-missing" and "engine-failed".
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
        _write_sources(site, home, config_path)
        _run(engine, home)
        shutil.copytree(home / "site", folder)
    _finish(site, folder)


def _write_sources(site: Site, home: Path, config_path: Path | None) -> None:
    docs = home / "docs"
    docs.mkdir()
    settings: dict[str, object] = {
        "site_name": site.name, "docs_dir": "docs", "site_dir": "site", "use_directory_urls": False,
        "theme": {"name": "material", "font": False, "language": site.language.partition("-")[0]},
        "plugins": ["search"], "markdown_extensions": ["attr_list", "tables", "admonition"],
        "extra_css": ["assets/newel.css"], "extra_javascript": ["assets/newel.js"],
    }  # fmt: skip
    if config_path is not None:
        lab = load_config(str(config_path))
        shutil.copytree(lab.docs_dir, docs, dirs_exist_ok=True)
        settings.update({"site_url": lab.site_url} if lab.site_url else {})
    write_pages(site, docs)
    # JSON is YAML, and a name with signs in it needs no care.
    (home / _CONFIG).write_text(json.dumps(settings), encoding="utf-8")


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


def _finish(site: Site, folder: Path) -> None:
    """The content policy in every page, and our entries in a search index of the known form."""
    for path in folder.rglob("*.html"):
        path.write_text(write_policy(path.read_text(encoding="utf-8")), encoding="utf-8")
    index = folder / "search" / "search_index.json"
    if index.is_file():
        text = add_entries(index.read_text(encoding="utf-8"), site.entries)
        index.write_text(text, encoding="utf-8")
        index.with_suffix(".js").write_text(script_form(text), encoding="utf-8")
