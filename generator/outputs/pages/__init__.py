"""One module for each kind of page: its anchors, its sections, what it is found by."""
