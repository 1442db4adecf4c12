"""What makes the theme ours: overrides, colours by the reader's choice, no outside request."""

from pathlib import Path
from typing import Any

from mkdocs.config.defaults import MkDocsConfig

from generator.outputs.search import SEPARATOR

THEME_FOLDER = Path(__file__).parent.parent / "outputs" / "theme"
FEATURES = ("toc.follow", "search.highlight")
PALETTE: tuple[dict[str, Any], ...] = (
    {
        "media": "(prefers-color-scheme)",
        "toggle": {"icon": "newel/light-auto", "name": "Light as the device says; switch to light"},
    },
    {
        "media": "(prefers-color-scheme: light)",
        "scheme": "default",
        "toggle": {"icon": "newel/light-on", "name": "Light; switch to dark"},
    },
    {
        "media": "(prefers-color-scheme: dark)",
        "scheme": "slate",
        "toggle": {"icon": "newel/light-off", "name": "Dark; switch to what the device says"},
    },
)


def apply_house_style(config: MkDocsConfig) -> None:
    """Set theme and search so that a mkdocs.yml of five lines gives the whole look."""
    theme = config.theme
    folder = str(THEME_FOLDER)
    if folder not in theme.dirs:
        theme.dirs.insert(0, folder)
    theme["font"] = False
    theme["features"] = list(FEATURES)
    theme["palette"] = [{**choice, "primary": "custom", "accent": "custom"} for choice in PALETTE]
    theme["icon"] = {**(theme.get("icon") or {}), "logo": "newel/post"}
    theme["favicon"] = "assets/newel-mark.svg"
    config.use_directory_urls = False
    # The theme would ask the forge for numbers on every page; our links to edit are made with the pages.
    config.repo_url = config.repo_name = config.edit_uri = config.edit_uri_template = None
    config.extra["generator"] = False
    config.mdx_configs.setdefault("toc", {})["title"] = "On this page"
    config.extra_css = ["assets/newel.css", *config.extra_css]
    config.extra_javascript = ["assets/newel.js", *config.extra_javascript]
    search = config.plugins.get("material/search")
    if search is not None and not search.config["separator"]:
        search.config["separator"] = SEPARATOR
