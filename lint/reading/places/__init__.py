"""Where stitches go, how far a run of them goes, and working clauses with their places."""
