"""The theme's settings and overrides that make a site look like ours, whatever engine lays it out."""

from pathlib import Path
from typing import Any

THEME_FOLDER = Path(__file__).parent / "theme"
FEATURES = ("toc.follow", "search.highlight")
FAVICON = "assets/newel-mark.svg"
LOGO = "newel/post"
_CHOICES: tuple[dict[str, Any], ...] = (
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


def palette() -> list[dict[str, Any]]:
    """Return the colours by the reader's choice; those of our own style sheet, not the theme's."""
    return [{**choice, "primary": "custom", "accent": "custom"} for choice in _CHOICES]
