"""One grammar for arithmetic on lengths, set arithmetic on shapes, and places.

A text is cut into tokens (numbers, lengths, dotted names, ``+ - * / &``, brackets, commas) and parsed by
operator precedence into a small tree of frozen nodes; nothing is ever handed to Python to run. What a node
means is up to who asks: lengths are evaluated in ``arithmetic``, shapes and places in rooms of their own.

``*`` and ``/`` bind closer than ``+``, ``-`` and ``&``. Those three bind alike, but ``&`` beside ``+`` or
``-`` wants brackets, because no two readers agree on which comes first. Positions count characters from 0.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias, cast

from heraldry.errors import ExpressionError, LengthError
from heraldry.units import FOOT_MARKS, MM_PER_UNIT, Length, match_length, unit_meant

MAX_CHARACTERS = 20_000
MAX_NODES = 500
"""Of the tree. A chain of 250 terms is 250 deep, which the walkers below still descend with ease."""
MAX_DEPTH = 50
"""Brackets, calls and signs inside one another; each takes six Python calls of the 1,000 there are."""

Operator = Literal["+", "-", "*", "/", "&"]


@dataclass(frozen=True)
class Number:
    """A bare number: a factor, or a length in the file's unit where a length is wanted."""

    value: Fraction
    position: int = 0


@dataclass(frozen=True)
class LengthLiteral:
    """A number with its unit."""

    length: Length
    position: int = 0


@dataclass(frozen=True)
class Name:
    """A name, perhaps dotted: ``rim``, ``land.junction``."""

    name: str
    position: int = 0


@dataclass(frozen=True)
class Negative:
    """The operand with its sign changed."""

    operand: Expression
    position: int = 0


@dataclass(frozen=True)
class Binary:
    """Two operands and the operator between them, at whose place ``position`` is."""

    operator: Operator
    left: Expression
    right: Expression
    position: int = 0


@dataclass(frozen=True)
class Call:
    """A function by name, with its arguments."""

    function: str
    arguments: tuple[Expression, ...]
    position: int = 0


Expression: TypeAlias = Number | LengthLiteral | Name | Negative | Binary | Call


def parse(text: str) -> Expression:
    """Parse one expression.

    Raises ExpressionError: what stands there, what was wanted, and at which character.

    >>> parse("width / 2 - 1/8 in")  # doctest: +ELLIPSIS
    Binary(operator='-', left=Binary(operator='/', ...), right=LengthLiteral(...), position=10)
    """
    if len(text) > MAX_CHARACTERS:
        raise ExpressionError(f"expression too long, found {len(text)} characters, write at most {MAX_CHARACTERS}", 0)
    return _Parser(text).whole()


def names_in(expression: Expression) -> tuple[Name, ...]:
    """The names an expression refers to, in the order of reading.

    >>> [name.name for name in names_in(parse("max(a, land.b) - a"))]
    ['a', 'land.b', 'a']
    """
    return tuple(node for node in walk(expression) if isinstance(node, Name))


def walk(expression: Expression) -> Iterator[Expression]:
    """Every node, a node before its operands, left before right."""
    waiting: list[Expression] = [expression]
    while waiting:
        node = waiting.pop()
        yield node
        waiting.extend(reversed(operands(node)))


def operands(node: Expression) -> tuple[Expression, ...]:
    """The nodes directly below one."""
    match node:
        case Negative(operand):
            return (operand,)
        case Binary(_, left, right):
            return (left, right)
        case Call(_, arguments):
            return arguments
        case _:
            return ()


def check_name(name: str) -> None:
    """Raise ExpressionError unless ``name`` may stand in an expression: letters, digits and _, no unit."""
    if not _PLAIN_NAME.fullmatch(name):
        raise ExpressionError(
            f"a name is made of letters, digits and _ and does not begin with a digit, found '{name[:60]}'"
        )
    if name in _UNIT_WORDS:
        raise ExpressionError(f"'{name}' is a word of lengths and cannot be a name, write for example '{name}_1'")


# --- tokens ------------------------------------------------------------------------------------------------

TokenKind = Literal["number", "length", "name", "sign", "end"]
_SPACE = re.compile(r"\s*")
_PLAIN_NAME = re.compile("[A-Za-z_][A-Za-z0-9_]*")
_NAME = re.compile(rf"{_PLAIN_NAME.pattern}(?:\.{_PLAIN_NAME.pattern})*")
_AFTER_FEET = re.compile(rf"[0-9]\s*(?:ft|[{FOOT_MARKS}])$")
_SIGNS = "+-*/&(),"
_UNIT_WORDS = frozenset(MM_PER_UNIT) | {"full"}
_POWER = {"+": 1, "-": 1, "&": 1, "*": 2, "/": 2}
"""How closely an operator binds."""
_PREFIX_POWER = 3
_LOOKALIKES = {
    "−": "-",
    "–": "-",
    "—": "-",
    "×": "*",
    "·": "*",
    "÷": "/",
    ":": "/",
    "|": "+",
    "∪": "+",
    "∩": "&",
    "[": "(",
    "]": ")",
    "{": "(",
    "}": ")",
}
"""What people type or paste, and the sign that is meant here."""


@dataclass(frozen=True)
class _Token:
    kind: TokenKind
    text: str
    start: int
    value: Fraction | Length | None = None

    @property
    def end(self) -> int:
        return self.start + len(self.text)

    def __str__(self) -> str:
        return f"'{self.text[:60]}'" if self.text else "the end"


def _tokens(text: str) -> Iterator[_Token]:
    position = _after_space(text, 0)
    before = ""
    while position < len(text):
        token = _token_at(text, position)
        if token.kind == "length" and "-" in token.text and before in _POWER:
            raise _joined_after_a_sign(token)
        yield token
        before = token.text
        position = _after_space(text, token.end)
    yield _Token("end", "", position)


def _after_space(text: str, position: int) -> int:
    space = _SPACE.match(text, position)
    return space.end() if space else position


def _token_at(text: str, start: int) -> _Token:
    try:
        amount = match_length(text, start)
    except LengthError as error:
        raise refusal(str(error), start) from None
    if amount:
        value, end = amount
        return _Token("length" if isinstance(value, Length) else "number", text[start:end], start, value)
    name = _NAME.match(text, start)
    if name:
        return _Token("name", name[0], start)
    if text[start] in _SIGNS:
        return _Token("sign", text[start], start)
    raise _strange_character(text[start], start)


def _joined_after_a_sign(token: _Token) -> ExpressionError:
    """The error of ``width/2-1/8 in``, where ``2-1/8 in`` was hardly meant as one length."""
    joined, apart = token.text.replace("-", " "), token.text.replace("-", " - ")
    return refusal(f"'{token.text}' can be read in two ways, write '{joined}' or '{apart}'", token.start)


def _strange_character(character: str, position: int) -> ExpressionError:
    meant = _LOOKALIKES.get(character)
    shown = f"'{character}'" if character.isprintable() else f"U+{ord(character):04X}"
    wanted = f"write '{meant}'" if meant else "write names, numbers and + - * / & ( ) ,"
    return refusal(f"this sign has no meaning here, found {shown}, {wanted}", position)


def refusal(message: str, position: int) -> ExpressionError:
    """An error that also tells its reader at which character it lies, counted from 1."""
    return ExpressionError(f"{message} (character {position + 1})", position)


# --- parser ------------------------------------------------------------------------------------------------


class _Parser:
    """Reads one text once; ``next`` is the token that has not been taken yet."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.tokens = _tokens(text)
        self.next = next(self.tokens)
        self.last_end = 0
        self.nodes = 0
        self.depth = 0

    def whole(self) -> Expression:
        expression = self.chain(1)
        if self.next.kind != "end":
            raise self.unexpected_after_value()
        return expression

    def chain(self, power: int) -> Expression:
        """Operands joined by operators that bind at least as close as ``power``, from the left."""
        start = operand_start = self.next.start
        left = self.operand()
        family = ""
        while self.next.kind == "sign" and _POWER.get(self.next.text, 0) >= power:
            operator = self.take()
            right_start = self.next.start
            right = self.chain(_POWER[operator.text] + 1)
            if power == 1 and _POWER[operator.text] == 1:
                if family and (family == "&") != (operator.text == "&"):
                    raise self.wants_brackets(start, operand_start, family, operator)
                family, operand_start = operator.text, right_start
            left = self.node(Binary(cast(Operator, operator.text), left, right, operator.start))
        return left

    def operand(self) -> Expression:
        self.depth += 1
        if self.depth > MAX_DEPTH:
            raise refusal(f"brackets and signs nested too deep, write at most {MAX_DEPTH}", self.next.start)
        token = self.take()
        expression = self.operand_from(token)
        self.depth -= 1
        return expression

    def operand_from(self, token: _Token) -> Expression:
        if isinstance(token.value, Length):
            return self.node(LengthLiteral(token.value, token.start))
        if isinstance(token.value, Fraction):
            return self.node(Number(token.value, token.start))
        if token.kind == "name" and self.next.text == "(":
            return self.call(token)
        if token.kind == "name":
            return self.node(Name(token.text, token.start))
        if token.text == "-":
            return self.node(Negative(self.chain(_PREFIX_POWER), token.start))
        if token.text == "(":
            return self.bracketed(token)
        raise self.no_value(token)

    def bracketed(self, opening: _Token) -> Expression:
        inner = self.chain(1)
        self.close(opening)
        return inner

    def call(self, name: _Token) -> Expression:
        opening = self.take()
        arguments: list[Expression] = []
        if self.next.text != ")":
            arguments.append(self.chain(1))
        while self.next.text == ",":
            self.take()
            arguments.append(self.chain(1))
        self.close(opening)
        return self.node(Call(name.text, tuple(arguments), name.start))

    def close(self, opening: _Token) -> None:
        if self.next.kind == "end":
            raise refusal("a bracket is never closed, found '(', write ')' where it ends", opening.start)
        if self.next.text != ")":
            raise self.unexpected_after_value()
        self.take()

    def take(self) -> _Token:
        token = self.next
        self.last_end = token.end
        if token.kind != "end":
            self.next = next(self.tokens)
        return token

    def node(self, expression: Expression) -> Expression:
        self.nodes += 1
        if self.nodes > MAX_NODES:
            raise refusal(
                f"expression too large, found more than {MAX_NODES} names, numbers and signs, "
                "give parts of it a name of their own",
                expression.position,
            )
        return expression

    def no_value(self, token: _Token) -> ExpressionError:
        before = self.text[: token.start].rstrip()
        after = f"after '{before[-1]}'" if before else "at the start"
        if token.kind == "end" and not before:
            return refusal("nothing to work out, found an empty text, write a name or a number", 0)
        wanted = "wants a name, a number or a bracket"
        return refusal(f"{after} an expression {wanted}, found {token}", token.start)

    def unexpected_after_value(self) -> ExpressionError:
        found, before = self.next, self.text[: self.last_end]
        word = found.text
        if found.text == ")":
            return refusal("a bracket too many, found ')', leave it out or open it before", found.start)
        if found.kind == "name" and word == "full":
            return refusal("a full-size length without its unit, found 'full', write 9 in full", found.start)
        if found.kind == "name" and before[-1].isdigit() and word not in _UNIT_WORDS:
            wanted = f"{unit_meant(word)} (to multiply, write '*' between)"
            return refusal(f"unknown unit, found '{word}' after a number, {wanted}", found.start)
        if found.kind == "number" and _AFTER_FEET.search(before):
            return refusal(f"inches want their unit, found {found} after feet, write {word} in", found.start)
        if found.text == ",":
            return refusal("a comma outside a function's brackets, found ',', leave it out", found.start)
        return refusal(
            f"two values without a sign between them, found {found}, write + - * / or & before it",
            found.start,
        )

    def wants_brackets(self, start: int, operand_start: int, family: str, operator: _Token) -> ExpressionError:
        """The error of ``a & b + c``, with both ways to write it; the right operand was taken just now."""
        before = self.text[start : operator.start].rstrip()
        right = self.text[operand_start : self.last_end]
        head = self.text[start:operand_start]
        after = self.text[operator.end : self.last_end]
        return refusal(
            f"'{family}' and '{operator.text}' beside one another want brackets, "
            f"write ({before}) {operator.text}{after} or {head}({right})",
            operator.start,
        )
