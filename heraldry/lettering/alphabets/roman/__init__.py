"""The roman: thick and thin, with bracketed serifs, the wide railroad manner."""
