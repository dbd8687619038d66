"""What offsets are made of: segments with their corners, and thin bands that reach to the offset curve."""
