"""What stands in the middle of a herald: land, letters, nature, railway things; one family a file, in one table.

A field fills a room of a frame, in the room's ink, cut out of the room's ground.
"""

from heraldry.ideas.fields.made import Field, Made
from heraldry.ideas.fields.room import Room
from heraldry.ideas.fields.table import FIELDS

__all__ = ["FIELDS", "Field", "Made", "Room"]
