"""Everything written to disk: an artwork goes in, a file of exact size comes out, whole or not at all."""

from heraldry.press.delivery import render, write, write_all
from heraldry.press.manifest import Manifest, WrittenFile, artwork_entry
from heraldry.press.outputs import OUTPUTS

__all__ = ["OUTPUTS", "Manifest", "WrittenFile", "artwork_entry", "render", "write", "write_all"]
