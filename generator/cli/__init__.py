"""The command `newel`: arguments in; text, files and an exit status out."""

from generator.cli.command import main

__all__ = ["main"]
