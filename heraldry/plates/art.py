"""Set arithmetic: ``disc - title + (land - line)`` becomes one expression of outlines, computed at once.

``+`` is together, ``-`` cut away, ``&`` common to both. The tree is kept whole down to the leaves (or to a
function, which needs a finished outline), so that curves are restored once and not after every step.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from heraldry.describe.expression import Binary, Call, Expression, Name
from heraldry.errors import ExpressionError, nearest
from heraldry.geometry.boolean import Difference, Intersection, SetExpression, Union, combine
from heraldry.geometry.outline import Outline
from heraldry.plates.art_functions import ART_FUNCTIONS, ArgumentKind, ArtFunction, call
from heraldry.plates.stage import Stage
from heraldry.resolve.resolved import PlaceName, ResolvedHerald


@dataclass(frozen=True)
class ArtRoom:
    """Where art is evaluated: the drawn shapes, and the herald whose named lengths its arguments may use."""

    stage: Stage
    herald: ResolvedHerald

    def outline(self, expression: Expression) -> Outline:
        """The outline that an expression means, curves restored.

        Raises ExpressionError (with its position) for anything that is not set arithmetic.
        """
        return combine(self.tree(expression)).outline

    def tree(self, expression: Expression) -> SetExpression:
        """The expression as set operations on outlines, not yet computed."""
        if isinstance(expression, Name):
            return self.stage.shape(expression.name, expression.position).outline
        if isinstance(expression, Binary):
            return self._operation(expression)
        if isinstance(expression, Call):
            return self._called(expression)
        raise ExpressionError("a number or a length is no art, write the name of a shape", expression.position)

    def _operation(self, expression: Binary) -> SetExpression:
        if expression.operator not in ("+", "-", "&"):
            raise ExpressionError(
                f"'{expression.operator}' means nothing between shapes, write + together, - cut away, & common to both",
                expression.position,
            )
        left, right = self.tree(expression.left), self.tree(expression.right)
        if expression.operator == "+":
            together = left.parts if isinstance(left, Union) else (left,)
            return Union((*together, right))
        if expression.operator == "-":
            base, cuts = (left.base, left.cuts) if isinstance(left, Difference) else (left, ())
            return Difference(base, (*cuts, right))
        return Intersection((left, right))

    def _called(self, expression: Call) -> Outline:
        function = ART_FUNCTIONS.get(expression.function)
        if function is None:
            known = nearest(expression.function, ART_FUNCTIONS)
            raise ExpressionError(f"no function is called '{expression.function}', {known}", expression.position)
        given = len(expression.arguments) - 1
        if not len(function.wants) - function.optional <= given <= len(function.wants):
            raise ExpressionError(
                f"'{function.name}' was given {given + 1} argument{'s' if given else ''}, write {function.usage}",
                expression.position,
            )
        return call(function, self.outline(expression.arguments[0]), self._arguments(function, expression))

    def _arguments(self, function: ArtFunction, expression: Call) -> list[Any]:
        wanted = zip(function.wants, expression.arguments[1:], strict=False)
        return [self._argument(kind, argument) for (_, kind), argument in wanted]

    def _argument(self, kind: ArgumentKind, argument: Expression) -> Any:
        if kind == "place":
            if not isinstance(argument, Name):
                raise ExpressionError("a place is wanted here, write a name like land.centre", argument.position)
            return self.stage.place(PlaceName(argument.name), argument.position)
        yardstick = self.herald.yardstick
        reader = {"length": yardstick.length_mm, "angle": yardstick.number, "count": yardstick.count}[kind]
        return reader(argument)
