"""GHS facts and screening: statements, labels, protection, reactivity; mixtures from composition."""
