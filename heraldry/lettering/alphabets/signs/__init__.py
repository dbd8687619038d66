"""Signs that every alphabet has in the same shape, and letters that are made of other letters and marks."""
