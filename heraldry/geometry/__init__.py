"""Floor 0: lengths become outlines here. Nothing on this floor has heard of railroads."""
