"""What several rules look up in a lab or a study; no rule stands here, and nothing here judges."""
