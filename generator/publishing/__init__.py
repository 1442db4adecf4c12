"""A finished build becomes a folder on disk, whole or not at all."""
