"""Posting: what an issue holds, what changed since the last one, who must approve, which copies are wrong."""
