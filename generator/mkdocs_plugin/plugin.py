"""The events of MkDocs, each handed on to the module that knows."""

import logging
from collections.abc import Callable
from pathlib import Path
from typing import Any, Literal

from markupsafe import escape
from mkdocs.config import config_options as opt
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page as EnginePage
from mkdocs.utils.templates import TemplateContext

from generator.mkdocs_plugin.framing import Framing, can_frame, is_model
from generator.mkdocs_plugin.house_style import apply_house_style
from generator.mkdocs_plugin.lab_site import build_lab_site, copied_on, problem_site
from generator.mkdocs_plugin.search_index import write_search_index
from generator.mkdocs_plugin.virtual_pages import add_site_files, fill_page, mark_page, navigation
from generator.outputs.frames import MODEL_BODY
from generator.outputs.offline import WORKER
from generator.outputs.page import SitePage
from generator.outputs.policy import write_policy
from generator.outputs.site import Site
from generator.problems import NewelError
from generator.publishing.offline_files import write_offline_files

log = logging.getLogger("mkdocs.plugins.newel")


class NewelConfig(Config):  # type: ignore[no-untyped-call]
    """What mkdocs.yml says under `newel`; `site`, `offline`, `progress` and `frames` come from
    `newel build` only.

    `edit_link` is read with the lab's folder.
    """

    folder = opt.Type(str, default="procedures")
    draft = opt.Type(bool, default=False)
    today = opt.Optional(opt.Type(str))
    edit_link = opt.Optional(opt.Type(str))
    site = opt.Optional(opt.Type(Site))
    offline = opt.Type(bool, default=False)
    progress = opt.Optional(opt.Type(object))
    frames = opt.Type(bool, default=False)


class NewelPlugin(BasePlugin[NewelConfig]):  # type: ignore[no-untyped-call]
    """Puts the pages of a lab into a site of MkDocs."""

    def __init__(self) -> None:
        self._command: Literal["build", "gh-deploy", "serve"] = "build"
        self._site: Site | None = None
        self._pages: dict[str, SitePage] = {}
        self._framing: Framing | None = None
        self._plain = False
        self._done = 0
        # The engine's own search index; None where a page may differ in more than the words that are ours.
        self.index: str | None = None

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:  # noqa: ARG002
        """Begin afresh for a command; that this event exists keeps the plugin between two builds of a server.

        MkDocs keeps it for the whole process, so a build that was handed its site never looks at the command.
        """
        self._command, self._site = command, None

    def on_shutdown(self) -> None:
        """End the command."""
        self._command, self._site = "build", None

    @event_priority(100)
    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Give the theme our look before the search plugin copies its settings."""
        apply_house_style(config)
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Read and check the lab while the last site still stands as it was."""
        try:
            self._site = self.config.site or build_lab_site(self._folder(config), self.config)
        except NewelError as error:
            if self._command != "serve":
                raise PluginError(f"{error.what}\n{error.hint}") from error
            log.error("%s\n%s", error.what, error.hint)
            self._site = problem_site(error, self._site)
        config.site_name = escape(self._site.name)  # the theme inserts it as HTML
        config.extra["draft"] = self._site.draft
        config.extra["offline"] = "" if self._command == "serve" or self.config.offline else WORKER
        config.extra |= copied_on(self._site.date if self.config.offline else "")
        self._done = 0

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add every page and file of the build, and list the pages that the navigation shows."""
        site = self._built()
        self._plain = can_frame(config)
        self._framing = Framing(site.pages, files) if self._plain and self.config.frames else None
        laid = self._framing.for_engine if self._framing else site.pages
        try:
            self._pages = add_site_files(files, config, site, laid)
        except NewelError as error:
            raise PluginError(f"{error.what}: {error.hint}") from error
        if config.nav is None:
            config.nav = navigation(site, files, self._pages)
        return files

    def on_page_markdown(self, markdown: str, *, page: EnginePage, config: MkDocsConfig, files: Files) -> str:  # noqa: ARG002
        """Keep a page of ours away from the Markdown parser; title and description come from the build."""
        page.update_date = self._built().date
        ours = self._pages.get(page.file.src_uri)
        if ours is None:
            return markdown
        mark_page(page, ours)
        return ""

    def on_page_content(self, html: str, *, page: EnginePage, config: MkDocsConfig, files: Files) -> str:  # noqa: ARG002
        """Give a page of ours its body, contents list and anchors."""
        ours = self._pages.get(page.file.src_uri)
        if ours is None:
            return html
        body = fill_page(page, ours)
        return MODEL_BODY if is_model(ours) else body

    def on_template_context(
        self, context: TemplateContext, *, template_name: str, config: MkDocsConfig
    ) -> TemplateContext:
        """Tell the map of the site of the pages that the engine does not see."""
        if self._framing and template_name == "sitemap.xml":
            mapped = self._framing.sitemap(context["pages"], config.site_url, self._built().date)
            context["pages"] = mapped
        return context

    def on_post_page(self, output: str, *, page: EnginePage, config: MkDocsConfig) -> str:  # noqa: ARG002
        """Write the content policy and say how far the build is."""
        if not is_model(self._pages.get(page.file.src_uri)):
            self._one_more()
        html = self._with_policy(output)
        return self._framing.take(page.file.src_uri, html) if self._framing else html

    def _one_more(self) -> None:
        self._done += 1
        if callable(self.config.progress):
            self.config.progress(self._done)

    def on_post_template(self, output_content: str, *, template_name: str, config: MkDocsConfig) -> str:  # noqa: ARG002
        """Write the content policy into pages that come from the theme alone."""
        return self._with_policy(output_content) if template_name.endswith(".html") else output_content

    @event_priority(-100)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Write the other pages, add our entries to the index; then list every file for the worker."""
        folder = Path(config.site_dir)
        if self._framing:
            self._framing.write_rest(folder, self._one_more)
        index = write_search_index(folder, self._built().entries)
        self.index = index if self._plain else None
        if config.extra["offline"]:
            write_offline_files(folder, self._built().name)

    def on_serve(
        self,
        server: LiveReloadServer,
        *,
        config: MkDocsConfig,
        builder: Callable[..., Any],  # noqa: ARG002
    ) -> LiveReloadServer:
        """Watch the lab's own folder too."""
        server.watch(str(self._folder(config)))
        return server

    def _with_policy(self, html: str) -> str:
        # The engine's server adds an inline script of its own that changes with each request.
        served = self._command == "serve" and self.config.site is None
        return html if served else write_policy(html)

    def _folder(self, config: MkDocsConfig) -> Path:
        return (Path(config.config_file_path or ".").parent / self.config.folder).resolve()

    def _built(self) -> Site:
        if self._site is None:
            raise PluginError("no site was built: the engine left out the event on_pre_build")
        return self._site
