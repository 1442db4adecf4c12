"""The files of a new lab's folder, as `newel init` writes them."""
