"""From a brief to two dozen heralds: composed, drawn, measured by the rules, the sound and most different ones kept."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from random import Random

from heraldry.artwork import Artwork
from heraldry.describe.description import Description
from heraldry.errors import HeraldryError
from heraldry.ideas.brief import Brief
from heraldry.ideas.difference import Raster, difference, raster_of
from heraldry.ideas.eras import Era
from heraldry.ideas.hands import Hand
from heraldry.ideas.inks import Inks, inks_of
from heraldry.ideas.kit import Kit
from heraldry.ideas.land import measured
from heraldry.ideas.proofs import Proof, described, proof_of
from heraldry.ideas.queue import Choice, choices, in_turn
from heraldry.ideas.road_hands import hands_of
from heraldry.ideas.rules import RULES, UNSOUND
from heraldry.ideas.sketch import Sketch, Tone, in_one_ink
from heraldry.ideas.writing import Sheet, herald_toml, road_toml

COUNT = 24
SPARE = 4
"""So many more are drawn than are wanted, and the ones most like others are left out."""
MOST_SHORTFALL = 1.6
"""The sum of what a herald falls short by, above which it is not shown."""
FINE, FINEST_MM = 0.016, 0.22
"""The fine line in the width of the herald, and its least thickness: a gap as wide is kept by the usual printer."""
IN_ONE_INK, SWAPPED = 0.25, 0.3
"""How often a herald is composed in one ink, and how often the inks change places."""
ALIKE = 0.035
"""Heralds that differ less than this look alike from afar: common practice, no source."""


@dataclass(frozen=True, eq=False)
class Idea:
    """A sound herald: its proof, how far it falls short of the rules, and what it looks like."""

    proof: Proof
    shortfall: float
    raster: Raster

    @property
    def sketch(self) -> Sketch:
        """What it was composed as."""
        return self.proof.sketch

    @property
    def artwork(self) -> Artwork:
        """The herald itself."""
        return self.proof.artwork


@dataclass(frozen=True, eq=False)
class Desk:
    """What all heralds of a page are drawn with."""

    brief: Brief
    inks: Inks
    road: Description
    hands: tuple[Hand, ...]


def desk_of(brief: Brief) -> Desk:
    """Inks, road and letters of a brief; a road that has no file yet is described as its file will be.

    Raises HeraldryError for colours and paints that are none, LetteringError where a letter is missing.
    """
    inks = inks_of(brief)
    if brief.road is not None:
        return Desk(brief, inks, brief.road, hands_of(brief.road, brief.words))
    return Desk(brief, inks, described(new_road_toml(brief, inks), Path(brief.road_file), None), ())


def new_road_toml(brief: Brief, inks: Inks) -> str:
    """The road file of a brief without one."""
    return road_toml(brief.words.name, brief.words.initials, inks.colours)


def sound_ideas(desk: Desk) -> Iterator[Idea]:
    """Sound heralds one by one, until there are a few more than a page holds, or no more frames and fields."""
    chance = Random(f"ideas {desk.brief.seed}")
    kept: list[Idea] = []
    for choice in in_turn(choices(desk.brief.era, chance)):
        idea = _tried(desk, choice, Random(f"{desk.brief.seed} {choice.frame.name} {choice.field.name}"))
        if idea is None or any(difference(idea.raster, other.raster) < ALIKE for other in kept):
            continue
        kept.append(idea)
        yield idea
        if len(kept) == COUNT + SPARE:
            return


def _tried(desk: Desk, choice: Choice, chance: Random) -> Idea | None:
    """A choice composed, drawn and measured; None where it cannot be, or is not sound."""
    sketch = choice.frame.compose(_kit(desk, choice.era, chance), choice.field)
    if sketch is None:
        return None
    sketch, sheet = _inked(desk, sketch, chance)
    text = herald_toml(sketch, sheet, f"{desk.brief.words.name}: {sketch.caption}")
    try:
        proof = proof_of(sketch, text, Path("herald.toml"), desk.road)
    except HeraldryError:
        return None
    return _measured(proof)


def _kit(desk: Desk, era: Era, chance: Random) -> Kit:
    brief = desk.brief
    titles, initials = (desk.hands or era.titles), (desk.hands or era.initials)
    return Kit(
        brief.words,
        chance.choice(titles),
        chance.choice(initials),
        measured(brief.region) if brief.region else None,
        era.name,
        max(FINE, round(FINEST_MM / brief.width_mm, 4)),
    )


def _inked(desk: Desk, sketch: Sketch, chance: Random) -> tuple[Sketch, Sheet]:
    """The sketch in one ink or two, and what its file says of them."""
    names = desk.inks.names
    if len(names) == 1 or chance.random() < IN_ONE_INK:
        sketch = replace(sketch, part=in_one_ink(sketch.part))
    order = names[::-1] if len(names) > 1 and chance.random() < SWAPPED else names
    tones: dict[Tone, str] = {"first": order[0], "second": order[-1]}
    own = {} if desk.inks.are_of_the_road or desk.brief.road is None else desk.inks.colours
    brief = desk.brief
    return sketch, Sheet(desk.brief.road_file, brief.width, brief.scale, brief.on, desk.inks.film, tones, own)


def _measured(proof: Proof) -> Idea | None:
    """The idea, unless a rule says that it is unsound, or it falls short of too many."""
    total = 0.0
    for rule in RULES:
        short = rule.falls_short(proof)
        total += rule.weight * short
        if short >= UNSOUND or total > MOST_SHORTFALL:
            return None
    return Idea(proof, total, raster_of(proof.artwork))


def chosen(ideas: Iterable[Idea]) -> tuple[Idea, ...]:
    """The page: of more than it holds, the worse of the two most alike goes, again and again.

    Raises HeraldryError where not enough are sound.
    """
    kept = list(ideas)
    if len(kept) < COUNT:
        raise HeraldryError(
            f"only {len(kept)} of {COUNT} heralds came out sound: a shorter name, a greater width or another era helps"
        )
    while len(kept) > COUNT:
        kept.pop(_least_wanted(kept))
    return tuple(kept)


def _least_wanted(ideas: Sequence[Idea]) -> int:
    """The place of the worse of the two that are most alike."""
    pairs = [(i, j) for i in range(len(ideas)) for j in range(i)]
    i, j = min(pairs, key=lambda pair: difference(ideas[pair[0]].raster, ideas[pair[1]].raster))
    return i if ideas[i].shortfall >= ideas[j].shortfall else j
