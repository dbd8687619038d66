"""Gothic: block letters without serifs, their strokes even to the eye."""
