"""The press: a finished card becomes a wall card in PDF and SVG, or is refused with a way to split it."""
