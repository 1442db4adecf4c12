"""The whole flow: read, study, check, build; no clock."""

from typing import TYPE_CHECKING

from generator.pipeline.check import Checked, check, check_procedure

if TYPE_CHECKING:
    from generator.pipeline.build import Outcome, build_site

__all__ = ["Checked", "Outcome", "build_site", "check", "check_procedure"]


def __getattr__(name: str) -> object:
    """Building brings templates and the press with it; checking alone does not wait for them."""
    if name in ("Outcome", "build_site"):
        from generator.pipeline import build

        return getattr(build, name)
    raise AttributeError(name)
