"""Frames: what holds a herald together; one family of silhouettes a file."""

from heraldry.ideas.frames import boards, plain, round, shields, spread
from heraldry.ideas.frames.frame import Frame

ALL: tuple[Frame, ...] = (*round.FRAMES, *shields.FRAMES, *boards.FRAMES, *spread.FRAMES, *plain.FRAMES)
"""Every frame there is."""

__all__ = ["ALL", "Frame"]
