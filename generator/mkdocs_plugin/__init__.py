"""Newel as a plugin of MkDocs: events in, the pages of a finished build out."""

from generator.mkdocs_plugin.plugin import NewelPlugin

__all__ = ["NewelPlugin"]
