"""What makes the theme ours: overrides, colours by the reader's choice, no outside request."""

from mkdocs.config.defaults import MkDocsConfig

from generator.outputs.look import FAVICON, FEATURES, LOGO, THEME_FOLDER, palette
from generator.outputs.search import SEPARATOR


def apply_house_style(config: MkDocsConfig) -> None:
    """Set theme and search so that a mkdocs.yml of five lines gives the whole look."""
    theme = config.theme
    folder = str(THEME_FOLDER)
    if folder not in theme.dirs:
        theme.dirs.insert(0, folder)
    theme["font"] = False
    theme["features"] = list(FEATURES)
    theme["palette"] = palette()
    theme["icon"] = {**(theme.get("icon") or {}), "logo": LOGO}
    theme["favicon"] = FAVICON
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
