"""What a drawing loses on its way, collected in plain words; each thing is said once, with how often it was met."""

from __future__ import annotations

from dataclasses import dataclass, field

MOST_NOTES = 12
"""More sentences than this nobody reads; the rest is counted."""


@dataclass
class Notes:
    """Sentences in the order in which they first came up."""

    counts: dict[str, int] = field(default_factory=dict)

    def add(self, sentence: str) -> None:
        """Say something; said before, it is only counted."""
        self.counts[sentence] = self.counts.get(sentence, 0) + 1

    @property
    def sentences(self) -> tuple[str, ...]:
        """All of them, those that were met more than once with their number.

        >>> notes = Notes()
        >>> notes.add("text left out"), notes.add("text left out")
        (None, None)
        >>> notes.sentences
        ('text left out (2 times)',)
        """
        told = [one if count == 1 else f"{one} ({count:,} times)" for one, count in self.counts.items()]
        rest = len(told) - MOST_NOTES
        return tuple(told) if rest <= 0 else (*told[:MOST_NOTES], f"and {rest} more things that cannot be kept")
