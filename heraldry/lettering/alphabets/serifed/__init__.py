"""Letters with serifs, drawn with whatever pen they are given: slab and roman are two pens of one hand."""
