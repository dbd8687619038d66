"""SVG files: from text to marks that are painted one over another."""
