"""The slab: square serifs as thick as the bars, the stout Egyptian of freight cars and depots."""
