"""The one table of fields."""

from __future__ import annotations

from heraldry.ideas.fields import land, letters, nature, railway
from heraldry.ideas.fields.made import Field

FIELDS: dict[str, Field] = {
    field.name: field for family in (land.FIELDS, letters.FIELDS, nature.FIELDS, railway.FIELDS) for field in family
}
"""Every field by its name."""
