"""Pages of paper that show things to a person: specimens of lettering, catalogues, ideas to choose from.

===========  ===========================================================================
``paper``    sheets of paper, margins, the grid that base lines stand on
``block``    a piece of a page: a height, and ink
``writing``  text in blocks: captions, samples, lines broken at words
``flow``     entries flow on pages, which become artworks
===========  ===========================================================================

Millimetres on paper; inside a block y runs down from 0 at its top into the negative.
"""
