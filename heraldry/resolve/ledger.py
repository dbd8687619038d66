"""Collects the faults of a file while its values are worked out, so that all of them are told at once."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from heraldry.describe.description import Description
from heraldry.describe.key_lines import KeyPath
from heraldry.errors import DescriptionError, Fault, HeraldryError


class Ledger:
    """Faults met so far; ``at`` turns an error into a fault of a key and goes on."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []

    @contextmanager
    def at(self, description: Description, path: KeyPath) -> Iterator[None]:
        """What goes wrong inside is written down as a fault of the key."""
        try:
            yield
        except DescriptionError as error:
            self.faults.extend(error.faults)
        except HeraldryError as error:
            what = f"{_dotted(path)}: {error}"
            self.faults.append(description.fault(description.path_told(path, str(error)), what))

    def add(self, description: Description, path: KeyPath, what: str, found: str = "", wanted: str = "") -> None:
        """Write a fault down."""
        self.faults.append(description.fault(path, f"{_dotted(path)}: {what}", found, wanted))

    def settle(self) -> None:
        """Raise DescriptionError if anything was written down."""
        if self.faults:
            raise DescriptionError(self.faults)


def _dotted(path: KeyPath) -> str:
    """A key as it is told; the items of a list are told apart by their lines, and by what was found."""
    return ".".join(step for step in path if isinstance(step, str))
