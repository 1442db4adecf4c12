"""The live preview: the draft in a browser on this machine, every save at once."""

from generator.serving.serve import serve

__all__ = ["serve"]
