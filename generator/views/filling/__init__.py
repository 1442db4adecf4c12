"""Views filled from a lab and its studies: everything that a page decides is decided here."""
