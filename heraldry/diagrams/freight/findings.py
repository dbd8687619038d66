"""What does not add up on a car: told before it is printed, and printed all the same.

The rules are those of ``weights`` and ``years``: light weight + load limit = gross rail load, unless a star
says that the owner set the limit lower; capacity a multiple of 1,000 lb, not above the load limit; letters not
under the least height.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from heraldry.artwork import Finding
from heraldry.diagrams.freight.car import Body, FreightCar, Weighing
from heraldry.diagrams.freight.data_block import DataLine
from heraldry.diagrams.freight.journals import axle
from heraldry.diagrams.freight.service_marks import wheel_dot
from heraldry.diagrams.freight.weights import (
    CAPACITY_STEP_LB,
    WEIGHT_STEP_LB,
    StencilledWeights,
    allowed_loads,
    weights_of,
)
from heraldry.diagrams.freight.years import FEDERAL_HEIGHTS, FEDERAL_LEAST_IN, WHITE_DOT

REWEIGHED_EVERY_MONTHS: dict[Body, int] = {"steel": 30, "wood": 15}
"""Interchange practice of the steam years; common practice, no source."""
LAST_YEAR_OF_REWEIGHING = 1962
"""Later intervals were longer: from memory, so nothing is said of later cars."""


def car_findings(car: FreightCar, year: int, road_name: str = "") -> tuple[Finding, ...]:
    """All findings about a car in a year; with its road's name, about its mark too.

    Raises DataError as ``weights_of`` does.
    """
    weights = weights_of(car, year)
    return (
        *_of_mark(car, road_name),
        *_of_gross_load(car, weights.weighing),
        *_of_load_limit(car, weights),
        *_of_light_weight(weights),
        *_of_capacity(weights),
        *_of_reweighing(car, weights.weighing, year),
        *_of_dot(car, year),
    )


def line_findings(lines: Iterable[DataLine], year: int) -> tuple[Finding, ...]:
    """Lines lower than the least height that federal rules ask for in a year."""
    if year not in FEDERAL_HEIGHTS:
        return ()
    return tuple(
        Finding(
            "letter height",
            f"{line.text} is {line.height_in:g} in high, {FEDERAL_HEIGHTS.source} asks for "
            f"{FEDERAL_LEAST_IN[line.role]} in at least",
        )
        for line in lines
        if line.height_in < FEDERAL_LEAST_IN.get(line.role, 0)
    )


def _of_mark(car: FreightCar, road_name: str) -> Iterator[Finding]:
    """A railroad's mark begins with its own first letter and does not end in X (a trade magazine's primer, 2006)."""
    last, owner = car.mark.letters[-1], car.mark.owner
    if owner in ("container owner", "trailer owner"):
        message = f"{car.mark.painted} ends in {last}, as marks of a {owner} do: no freight car bears it"
        yield Finding("reporting mark", message)
    elif owner == "private owner" and "RAIL" in road_name.upper():
        message = (
            f"{car.mark.painted} ends in {last}, as marks of private owners do: {road_name} sounds like a railroad"
        )
        yield Finding("reporting mark", message, "note")
    first = next((letter for letter in road_name.upper() if letter.isalpha()), "")
    if first and car.mark.owner == "railroad" and car.mark.letters[0] != first:
        message = f"a railroad's mark begins as its name does: {car.mark.painted} is not for {road_name}"
        yield Finding("reporting mark", message, "note")


def _of_gross_load(car: FreightCar, weighing: Weighing) -> Iterator[Finding]:
    allowed = allowed_loads(car, weighing)
    own = car.gross_rail_load_lb
    if own is not None and allowed and own not in allowed:
        message = f"a gross rail load of {own:,} lb is none for {_journals(car, weighing)}: {_either(allowed)}"
        yield Finding("gross rail load", message)


def _of_load_limit(car: FreightCar, weights: StencilledWeights) -> Iterator[Finding]:
    given = weights.weighing.load_limit_lb
    if weights.load_limit_lb is None or given is None:
        return
    if given % WEIGHT_STEP_LB:
        yield Finding("load limit", f"LD LMT goes by {WEIGHT_STEP_LB} lb, found {given:,}")
    sums = (car.gross_rail_load_lb,) if car.gross_rail_load_lb else allowed_loads(car, weights.weighing)
    if sums:
        yield from _of_sum(car, weights, given, sums)


def _of_sum(car: FreightCar, weights: StencilledWeights, given: int, sums: tuple[int, ...]) -> Iterator[Finding]:
    total = given + weights.light_weight_lb
    said = f"{given:,} + {weights.light_weight_lb:,} = {total:,} lb"
    starred = weights.weighing.starred
    if total > max(sums):
        yield Finding("load limit", f"{said} is more than {_journals(car, weights.weighing)} carry: {_either(sums)}")
    elif total in sums and starred:
        yield Finding("load limit", f"{said} is all that the axles carry: a star says that it is less", "note")
    elif total not in sums and not starred:
        wanted = f"{_either(sums)}; a limit set lower by the owner has a star"
        yield Finding("load limit", f"{said} does not add up for {_journals(car, weights.weighing)}: {wanted}")


def _of_light_weight(weights: StencilledWeights) -> Iterator[Finding]:
    exact = weights.weighing.light_weight_lb
    if exact % WEIGHT_STEP_LB:
        message = f"LT WT goes by {WEIGHT_STEP_LB} lb: {exact:,} is stencilled as {weights.light_weight_lb:,}"
        yield Finding("light weight", message, "note")
    limit = weights.load_limit_lb
    if limit is not None and weights.light_weight_lb > limit:  # a slip, as a rule: common practice, no source
        message = f"LT WT {weights.light_weight_lb:,} is above LD LMT {limit:,}: few cars weigh more than they carry"
        yield Finding("light weight", message, "note")


def _of_capacity(weights: StencilledWeights) -> Iterator[Finding]:
    capacity, limit = weights.capacity_lb, weights.load_limit_lb
    if capacity is None:
        return
    if capacity % CAPACITY_STEP_LB:
        yield Finding("capacity", f"CAPY goes by {CAPACITY_STEP_LB:,} lb, found {capacity:,}")
    if limit is not None and capacity > limit:
        yield Finding("capacity", f"CAPY {capacity:,} is above LD LMT {limit:,}, it may be as much at most")


def _of_reweighing(car: FreightCar, weighing: Weighing, year: int) -> Iterator[Finding]:
    months = REWEIGHED_EVERY_MONTHS[car.body]
    if year <= LAST_YEAR_OF_REWEIGHING and weighing.date.months_until(year) > months:
        message = (
            f"last weighed {weighing.date}: a {car.body} car was weighed every {months} months, also before {year}"
        )
        yield Finding("weighing date", message, "note")


def _of_dot(car: FreightCar, year: int) -> Iterator[Finding]:
    dot = wheel_dot(car, year)
    if dot and dot.colour == "white" and year not in WHITE_DOT:
        message = f"cars with a white wheel dot were barred from 31 December 1978, a car of {year} has a yellow one"
        yield Finding("wheel dot", message)


def _journals(car: FreightCar, weighing: Weighing) -> str:
    return f"{axle(car.axle).journal} in journals in {weighing.date.year}"


def _either(loads: tuple[int, ...]) -> str:
    return " or ".join(f"{pounds:,} lb" for pounds in loads)
