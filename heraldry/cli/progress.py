"""A progress bar for whatever takes more than a second, and only where a person looks."""

from __future__ import annotations

import time
from collections.abc import Iterable, Iterator
from typing import TypeVar

from heraldry.cli.say import looks_a_person

PATIENCE_S = 1.0
"""How long a person waits without being told."""

Item = TypeVar("Item")


def watched(items: Iterable[Item], what: str, total: int | None) -> Iterator[Item]:
    """The items one by one; after a second of work a bar shows how many are done (of how many, if that is known)."""
    if not looks_a_person():
        yield from items
        return
    from rich.console import Console  # imported where used: start-up time
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeElapsedColumn

    started = time.monotonic()
    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn(), TimeElapsedColumn())
    bar = Progress(*columns, console=Console(stderr=True), transient=True)
    task = bar.add_task(what, total=total)
    try:
        for item in items:
            yield item
            bar.advance(task)
            if time.monotonic() - started > PATIENCE_S and not bar.live.is_started:
                bar.start()
    finally:
        bar.stop()
