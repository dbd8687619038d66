"""Ideas: a page of sound, different heralds for a railroad, each of them an ordinary description.

================  ==========================================================================================
``brief``         what is asked for: words, land, colours, era, size, seed
``words``         the parts of a name: body, kind of company, initials
``eras``          the letters and colours of an era; ``hands`` brings lines of them to a length
``road_hands``    the hands of a road that has alphabets of its own
``inks``          the inks of a page, seen on its paint
``land``          the land that a railroad serves, measured once
``sketch``        a herald as it is composed: shapes, and which ink each lies in
``kit``           what a herald is composed with, and the lines of lettering that all have in common
``fields``        what stands in the middle; ``frames`` compose whole heralds round it
``writing``       a sketch as TOML
``proofs``        a sketch drawn
``rules``         rules of design, measured on the drawn herald
``difference``    how different two heralds look
``queue``         what is tried, and in what order
``choosing``      from a brief to two dozen heralds
``page``          the contact page
``taking``        one idea as a file
================  ==========================================================================================

A herald is composed as a modeller would describe it and drawn by the same stages as any file, so that an idea that
is taken draws to the very artwork of the page. All chance comes from the seed; each herald has its own.
"""

from heraldry.ideas.brief import ROAD_FILE, Brief, brief_of
from heraldry.ideas.choosing import COUNT, SPARE, Desk, Idea, chosen, desk_of, sound_ideas
from heraldry.ideas.page import contact_page
from heraldry.ideas.taking import take

__all__ = [
    "COUNT",
    "ROAD_FILE",
    "SPARE",
    "Brief",
    "Desk",
    "Idea",
    "brief_of",
    "chosen",
    "contact_page",
    "desk_of",
    "sound_ideas",
    "take",
]
