"""Finished data to show, as frozen values; templates place and loop, never decide."""
