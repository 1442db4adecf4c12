"""Newel: bench procedures as data, checked as a sequence, shown as pages and cards."""
