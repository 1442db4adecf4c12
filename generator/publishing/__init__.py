"""A finished build becomes a folder on disk, whole or not at all."""

from generator.publishing.publish import publish

__all__ = ["publish"]
