"""A class of cars lettered alike, and what is lettered on cars, each by its own rules and for its own years.

The first rooms stand alone and draw no letters: text goes out as lines with their full-size heights, plates and panels
as outlines at model size.

=================  ========================================================================
``numbers``        road numbers and series of them; a table with a row a car
``freight``        North American freight cars: reporting marks, weights, what a year asks for
``colour_bars``    the colour-bar identification plate of 1967 to 1977
``europe``         twelve-digit wagon numbers, engine numbers, the load grid
``containers``     container numbers of ISO 6346
=================  ========================================================================

The others go from a diagram file to artworks, in this order:

=====================  ====================================================================
``side, measuring``    flat faces, measured: paints, panels, keep-outs, ribs
``cars, car_data``     the cars of the class, with the texts that each has for itself
``item, itemising``    what is lettered: ``subjects`` (shapes, heralds) and ``markings``
``sketch, studio``     items drawn about the point where they are held, each once
``layout``             where they stand on a side, and how large, the same for every car
``class_of_cars``      all of this for one file
``pieces, drawing``    items in place, car by car: artworks; ``joints``, ``loose_figures``, ``crew``
``clearances``         what touches what; ``grounds`` and ``print_findings``: what will not print
``picture, proof``     cars in their paints, ``schedule`` of places, contact pages
``free_space``         where there is room for more
=====================  ====================================================================
"""
