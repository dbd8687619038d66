"""Curves out of flattened results: every chord remembers its curve, and runs of chords become it again."""
