"""Speed as ratios of one run: ours against a yardstick that did comparable work beside it."""
