"""Arithmetic on lengths and numbers: an expression becomes a quantity in millimetres.

A quantity is a number with a power of length, 0 (a number) or 1 (a length in mm). A bare number that meets a
length in a sum takes the file's unit: with ``unit = "mm"``, ``width / 2 - 2.6`` takes 2.6 mm off. In products
and quotients a number is a factor. Lengths never multiply into areas, since no key takes one.

Full-size lengths turn into model size at the file's own scale as soon as they are met, by the file's
``Ruler``; the quantity remembers that they took part, so that a file can be asked for its scale.
"""

from __future__ import annotations

import math
from collections import ChainMap
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from graphlib import CycleError, TopologicalSorter
from typing import TypeAlias

from heraldry.describe.expression import (
    Binary,
    Call,
    Expression,
    LengthLiteral,
    Name,
    Negative,
    Number,
    check_name,
    names_in,
    parse,
    refusal,
)
from heraldry.errors import ExpressionError, LengthError, LetError, nearest
from heraldry.units import MILLIMETRES, Ruler

Raw: TypeAlias = Expression | str | int | float
"""What a key may hold: a parsed expression, its text, or a plain number of TOML."""

LARGEST = 1e9
"""Millimetres, or a plain number: 1,000 km is a slip of the pen, and products of products stay finite."""
MAX_NAMES = 500
"""In one ``[let]``; every one that is not known is compared with all the others."""
FUNCTIONS: dict[str, Callable[[Iterable[float]], float]] = {"max": max, "min": min}
RESERVED = frozenset({*FUNCTIONS, "origin"})
"""Names that mean something else wherever art or a place may use those of ``[let]``."""


@dataclass(frozen=True)
class Quantity:
    """``value`` in mm where ``power`` is 1, a plain number where it is 0."""

    value: float
    power: int = 0
    full: bool = False
    """Whether a full-size length took part in it."""

    @property
    def kind(self) -> str:
        """In words, for errors."""
        return "a length" if self.power else "a number"


def evaluate(raw: Raw, names: Mapping[str, Quantity], ruler: Ruler = MILLIMETRES) -> Quantity:
    """The quantity of an expression, a length or a number as it comes out.

    Raises ExpressionError: an expression that cannot be parsed, an unknown name or function, a sum or product
    that has no meaning, a full-size length without a scale, a value out of range.

    >>> evaluate("2 * (width / 8) + 1", {"width": Quantity(24.0, 1)})
    Quantity(value=7.0, power=1, full=False)
    """
    return _Evaluator(names, ruler).value(_parsed(raw))


def evaluate_length(raw: Raw, names: Mapping[str, Quantity], ruler: Ruler = MILLIMETRES) -> Quantity:
    """The same, in a place that wants a length: a bare number is in the file's unit.

    >>> evaluate_length(0.5, {}, Ruler("in"))
    Quantity(value=12.7, power=1, full=False)
    """
    evaluator = _Evaluator(names, ruler)
    expression = _parsed(raw)
    return evaluator.as_length(evaluator.value(expression), expression.position)


def evaluate_number(raw: Raw, names: Mapping[str, Quantity], ruler: Ruler = MILLIMETRES) -> float:
    """The same, in a place that wants a number; raises ExpressionError for a length too.

    >>> evaluate_number("width / 1 in", {"width": Quantity(12.7, 1)})
    0.5
    """
    expression = _parsed(raw)
    quantity = evaluate(expression, names, ruler)
    if quantity.power:
        raise refusal(
            f"a number is wanted, found a length ({quantity.value:g} mm), divide it by a length or leave its unit out",
            expression.position,
        )
    return quantity.value


def _parsed(raw: Raw) -> Expression:
    if isinstance(raw, str):
        return parse(raw)
    if isinstance(raw, int | float):
        return Number(_exact(raw))
    return raw


def _exact(number: int | float) -> Fraction:
    """The number as it was written: 0.9 is nine tenths, not the double next to it."""
    if not abs(number) <= LARGEST:  # written so that it holds for nan
        raise _out_of_range(number, 0)
    return Fraction(str(number))


@dataclass(frozen=True)
class _Evaluator:
    names: Mapping[str, Quantity]
    ruler: Ruler

    def value(self, node: Expression) -> Quantity:
        """One Python call a level of the tree, so that the longest chain the parser admits fits the stack."""
        match node:
            case Number(value):
                return self.within_range(Quantity(float(value)), node.position)
            case LengthLiteral():
                return self.literal(node)
            case Name():
                return self.named(node)
            case Negative(operand):
                inner = self.value(operand)
                return Quantity(-inner.value, inner.power, inner.full)
            case Binary(_, left, right):
                return self.combined(node, self.value(left), self.value(right))
            case Call(_, arguments):
                return self.called(node, [self.value(argument) for argument in arguments])

    def literal(self, node: LengthLiteral) -> Quantity:
        try:
            mm = self.ruler.model_mm(node.length)
        except LengthError as error:
            raise refusal(str(error), node.position) from None
        return self.within_range(Quantity(mm, 1, node.length.full), node.position)

    def named(self, node: Name) -> Quantity:
        if node.name not in self.names:
            raise unknown_name(node, self.names)
        return self.names[node.name]

    def as_length(self, quantity: Quantity, position: int) -> Quantity:
        if quantity.power:
            return quantity
        return self.within_range(Quantity(quantity.value * self.ruler.mm_per_unit, 1, quantity.full), position)

    def combined(self, node: Binary, left: Quantity, right: Quantity) -> Quantity:
        full = left.full or right.full
        match node.operator:
            case "+" | "-":
                left, right = self.alike([left, right], node.position)
                value = left.value + (right.value if node.operator == "+" else -right.value)
                power = left.power
            case "*":
                value, power = left.value * right.value, left.power + right.power
            case "/":
                value, power = _quotient(node, left, right), left.power - right.power
            case "&":
                raise refusal("'&' has no meaning between lengths, it is for shapes", node.position)
        if power not in (0, 1):
            raise _no_such_power(node, power)
        return self.within_range(Quantity(value, power, full), node.position)

    def called(self, node: Call, arguments: list[Quantity]) -> Quantity:
        if node.function not in FUNCTIONS:
            known = nearest(node.function, FUNCTIONS)
            raise refusal(f"unknown function of lengths, found '{node.function}', {known}", node.position)
        if not arguments:
            raise refusal(f"{node.function} of nothing, found '()', write {node.function}(a, b)", node.position)
        alike = self.alike(arguments, node.position)
        value = FUNCTIONS[node.function](quantity.value for quantity in alike)
        return Quantity(value, alike[0].power, any(quantity.full for quantity in alike))

    def alike(self, quantities: list[Quantity], position: int) -> list[Quantity]:
        """All numbers as they are, or all as lengths if one of them is a length."""
        if not any(quantity.power for quantity in quantities):
            return quantities
        return [self.as_length(quantity, position) for quantity in quantities]

    def within_range(self, quantity: Quantity, position: int) -> Quantity:
        if not abs(quantity.value) <= LARGEST:
            raise _out_of_range(quantity.value, position)
        return quantity


def _out_of_range(value: int | float, position: int) -> ExpressionError:
    # Python neither prints a whole number of more than 4,300 figures nor makes a float of one beyond 308.
    figures = int(math.log10(abs(value))) + 1 if isinstance(value, int) else 0
    shown = f"a number of some {figures} figures" if figures else f"{value:.6g}"
    return refusal(f"value out of range, found {shown}, at most {LARGEST:g} can be drawn", position)


def unknown_name(node: Name, known: Iterable[str]) -> ExpressionError:
    """The error of a name that nothing bears, with the nearest that something does."""
    names = sorted(known)
    wanted = nearest(node.name, names) if names else "no names are known here"
    return refusal(f"unknown name, found '{node.name}', {wanted}", node.position)


def _quotient(node: Binary, left: Quantity, right: Quantity) -> float:
    if right.value == 0:
        raise refusal("division by zero, found a divisor of 0, write another divisor", node.position)
    return left.value / right.value


def _no_such_power(node: Binary, power: int) -> ExpressionError:
    if power > 0:
        return refusal(
            "a length times a length is an area, found '*' between two lengths, leave the unit of one of them out",
            node.position,
        )
    return refusal(
        "a number cannot be divided by a length, found '/' before a length, "
        "give the number its unit, or write a fraction of an inch without spaces (1/8 in)",
        node.position,
    )


def evaluate_let(
    table: Mapping[str, Raw], given: Mapping[str, Quantity], ruler: Ruler = MILLIMETRES
) -> dict[str, Quantity]:
    """The named lengths and numbers of ``[let]``, in the order of the table; they may use one another.

    ``given`` are names from outside the table, such as ``width``. Raises LetError with every name that has no
    value because of itself; names that merely use such a one are not complained of.

    >>> {name: q.value for name, q in evaluate_let({"b": "a / 2", "a": "4 mm"}, {}).items()}
    {'b': 2.0, 'a': 4.0}
    """
    trees, errors = _parsed_table(table, given)
    uses = {name: [used.name for used in names_in(tree) if used.name in table] for name, tree in trees.items()}
    values: dict[str, Quantity] = {}
    names = ChainMap(values, dict(given))
    for name in _in_turn(uses, errors):
        if name in trees and all(used in values for used in uses[name]):
            try:
                values[name] = evaluate(trees[name], names, ruler)
            except ExpressionError as error:
                errors[name] = error
    if errors:
        raise LetError(errors)
    return {name: values[name] for name in table}


def _parsed_table(
    table: Mapping[str, Raw], given: Mapping[str, Quantity]
) -> tuple[dict[str, Expression], dict[str, ExpressionError]]:
    trees: dict[str, Expression] = {}
    errors: dict[str, ExpressionError] = {}
    if len(table) > MAX_NAMES:
        first_over = list(table)[MAX_NAMES]
        return {}, {first_over: refusal(f"too many names, found {len(table)}, give at most {MAX_NAMES}", 0)}
    for name, raw in table.items():
        try:
            check_name(name)
            if name in given or name in RESERVED:
                raise refusal(f"this name is taken, found '{name}', choose another", 0)
            trees[name] = _parsed(raw)
        except ExpressionError as error:
            errors[name] = error
    return trees, errors


def _in_turn(uses: Mapping[str, list[str]], errors: dict[str, ExpressionError]) -> tuple[str, ...]:
    """The names, each after those it uses; none, and an entry in ``errors``, where they go in a circle."""
    try:
        return tuple(TopologicalSorter(uses).static_order())
    except CycleError as error:
        circle = error.args[1][:0:-1]  # each uses the next; the first, which is also the last, left out once
    order = list(uses)
    first = min(range(len(circle)), key=lambda i: order.index(circle[i]))
    turned = [*circle[first:], *circle[:first], circle[first]]
    errors[turned[0]] = refusal(f"names that need one another, found {' → '.join(turned)}, give one a value", 0)
    return ()
