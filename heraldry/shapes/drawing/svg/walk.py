"""Walks over the tree of a drawing in the order of painting, and turns every shape into marks.

On the way down go the map onto the page, the inherited style, the windows that cut away what lies outside of them,
and whether the part that is wanted has been entered. What is met and cannot be kept goes into the notes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from heraldry.errors import GeometryError, nearest
from heraldry.geometry.affine import IDENTITY, Affine
from heraldry.shapes.drawing.notes import Notes
from heraldry.shapes.drawing.picture import MOST_SEGMENTS, Mark, Picture, Window
from heraldry.shapes.drawing.svg.forms import FORMS, chains
from heraldry.shapes.drawing.svg.numbers import PIXEL_MM, length_px, transform
from heraldry.shapes.drawing.svg.paint import Palette
from heraldry.shapes.drawing.svg.style import Style
from heraldry.shapes.drawing.svg.style_sheet import StyleSheet
from heraldry.shapes.drawing.svg.tree import Element, read_tree
from heraldry.shapes.drawing.svg.viewport import Frame, page, within

MOST_VISITS = 10_000
"""Elements that are walked over, with all repetitions by ``use``."""

DEEPEST_USE = 32
"""Uses of uses; a drawing needs two or three."""

NO_PAGE = Frame(0.0, 0.0, 100.0, 100.0)
"""What ``%`` is counted from in a file that gives itself no size (CSS leaves it to the reader)."""

QUIET = frozenset(
    [
        "defs",
        "desc",
        "metadata",
        "title",
        "style",
        "symbol",
        "marker",
        "pattern",
        "clipPath",
        "mask",
        "linearGradient",
        "radialGradient",
    ]
)
"""Elements that paint nothing where they stand."""

LEFT_OUT = {
    "text": "text is left out: set it anew as a shape of lettering, or turn it into paths first",
    "image": "a picture made of dots is left out: outlines cannot be made of it",
    "foreignObject": "a foreign object is left out",
    "script": "a script is passed over: nothing in a drawing is run",
    "animate": "movement is passed over: the drawing is read at rest",
}
LEFT_OUT |= dict.fromkeys(("animateTransform", "animateMotion", "animateColor", "set"), LEFT_OUT["animate"])

GROUPS = frozenset(("g", "a", "svg", "switch", "use"))


@dataclass(frozen=True)
class Scene:
    """What an element inherits."""

    onto_page: Affine
    style: Style
    frame: Frame
    windows: tuple[Window, ...] = ()
    is_wanted: bool = True
    uses: tuple[str, ...] = ()
    sizes: Mapping[str, str] = field(default_factory=dict)
    """Width and height that a use gives to what it uses."""


def read_svg(content: bytes, file: str, part: str | None) -> Picture:
    """The picture of an SVG file, or of the part of it with an id or a label; raises GeometryError."""
    root = read_tree(content, file)
    notes = Notes()
    walk = _Walk(notes, part, StyleSheet.of(root, notes), _by_id(root))
    marks = tuple(walk.whole(root))
    if part is not None and not walk.part_found:
        raise GeometryError(
            f"{file} has no part '{part}', {nearest(part, walk.named) if walk.named else 'none has a name'}"
        )
    return Picture(marks, PIXEL_MM, tuple(dict.fromkeys(walk.named)), notes.sentences)


def _by_id(root: Element) -> dict[str, Element]:
    found: dict[str, Element] = {}
    waiting = [root]
    while waiting:
        element = waiting.pop()
        if element.id:
            found.setdefault(element.id, element)
        waiting.extend(reversed(element.children))
    return found


@dataclass
class _Walk:
    """One walk over one tree."""

    notes: Notes
    part: str | None
    sheet: StyleSheet
    by_id: Mapping[str, Element]
    visits: int = 0
    segments: int = 0
    part_found: bool = False
    named: list[str] = field(default_factory=list)
    _declared: dict[int, dict[str, str]] = field(default_factory=dict)

    def whole(self, root: Element) -> Iterator[Mark]:
        """All marks of a file, cut at the edge of its page."""
        view = page(root)
        scene = Scene(IDENTITY, Style(), view.inner if view else NO_PAGE, is_wanted=self.part is None)
        if view is not None:
            if view.is_empty:
                raise GeometryError("the page of the drawing has no size")
            edge = Mark((view.frame.ring,), IDENTITY, "")
            scene = replace(scene, onto_page=view.outward, windows=(Window((edge,)),))
        scene = self._entered(root, scene)
        return self._children(root, scene)

    def _children(self, element: Element, scene: Scene) -> Iterator[Mark]:
        for child in element.children:
            yield from self._element(child, scene)

    def _element(self, element: Element, scene: Scene) -> Iterator[Mark]:
        self.visits += 1
        if self.visits > MOST_VISITS:
            raise GeometryError(
                f"the drawing has more than {MOST_VISITS:,} elements, those counted that are used again"
            )
        if element.tag in LEFT_OUT:
            self.notes.add(LEFT_OUT[element.tag])
        if element.tag not in GROUPS and element.tag not in FORMS:
            if element.tag not in QUIET and element.tag not in LEFT_OUT and not element.tag.startswith("?"):
                self.notes.add(f"'{element.tag[:40]}' is not known and left out")
            return
        if self._own(element).get("display", "") == "none":
            return
        scene = self._entered(element, scene)
        if element.tag in FORMS:
            yield from self._shape(element, scene)
        else:
            yield from GROUP_WALKS[element.tag](self, element, scene)

    def _own(self, element: Element) -> dict[str, str]:
        known = self._declared.get(id(element))
        if known is None:
            known = self._declared[id(element)] = self.sheet.declared(element)
        return known

    def _entered(self, element: Element, scene: Scene) -> Scene:
        """The scene inside an element: its own map, style and windows added."""
        if self.part is None or not scene.is_wanted:
            self.named.extend(element.names)
        is_part = self.part is not None and self.part in element.names
        self.part_found = self.part_found or is_part
        own = self._own(element)
        self._note_effects(own)
        moved = scene.onto_page @ self._map(own.get("transform", ""))
        style = scene.style.inherited(own, scene.frame)
        inside = replace(scene, onto_page=moved, style=style, is_wanted=scene.is_wanted or is_part)
        return replace(inside, windows=(*scene.windows, *self._clips(own, inside)))

    def _map(self, text: str) -> Affine:
        if not text:
            return IDENTITY
        found = transform(text)
        if found is None:
            self.notes.add(f"the transform '{text[:40]}' cannot be read and is passed over")
        return found or IDENTITY

    def _note_effects(self, own: Mapping[str, str]) -> None:
        for key, sentence in EFFECTS.items():
            if own.get(key, "none") not in ("none", ""):
                self.notes.add(sentence)
        if 0.0 <= _share(own.get("opacity", "1")) < 1.0:
            self.notes.add("transparency is passed over: ink is there or it is not")

    def _shape(self, element: Element, scene: Scene) -> Iterator[Mark]:
        style = scene.style
        if not scene.is_wanted or style.is_hidden:
            return
        paths = chains(element, scene.frame, self.notes)
        self.segments += sum(len(path.segments) for path in paths)
        if self.segments > MOST_SEGMENTS:
            raise GeometryError(f"the drawing has more than {MOST_SEGMENTS:,} segments: it is a picture, and no herald")
        if paths:
            yield from style.marks(paths, Palette(self.by_id, self.sheet, self.notes), scene.onto_page, scene.windows)

    def _switch(self, element: Element, scene: Scene) -> Iterator[Mark]:
        """The first child that paints; conditions of language are taken as met."""
        for child in element.children:
            if child.tag in FORMS or child.tag in GROUPS:
                yield from self._element(child, scene)
                return

    def _inner_svg(self, element: Element, scene: Scene) -> Iterator[Mark]:
        view = within(element, scene.frame, dict(scene.sizes))
        if view.is_empty:
            return
        windows = scene.windows
        if self._own(element).get("overflow", "hidden") not in ("visible", "auto"):
            windows = (*windows, Window((Mark((view.frame.ring,), scene.onto_page, ""),)))
        inside = replace(scene, onto_page=scene.onto_page @ view.outward, frame=view.inner, windows=windows, sizes={})
        yield from self._children(element, inside)

    def _use(self, element: Element, scene: Scene) -> Iterator[Mark]:
        link = element.attributes.get("href", "")
        target = self._linked(link)
        if target is None or target.tag not in (*FORMS, *GROUPS, "symbol"):
            return
        if target.id in scene.uses or len(scene.uses) >= DEEPEST_USE:
            raise GeometryError(f"the drawing uses '{target.id[:40]}' inside itself")
        x = length_px(element.attributes.get("x", "0"), scene.frame.width) or 0.0
        y = length_px(element.attributes.get("y", "0"), scene.frame.height) or 0.0
        sizes = {key: element.attributes[key] for key in ("width", "height") if key in element.attributes}
        inside = replace(
            scene, onto_page=scene.onto_page @ Affine.move(x, y), uses=(*scene.uses, target.id), sizes=sizes
        )
        if target.tag == "symbol":
            yield from self._inner_svg(target, self._entered(target, inside))
        else:
            yield from self._element(target, inside)

    def _linked(self, link: str) -> Element | None:
        """The element of a link into this file; a link out of it is refused."""
        if link and not link.startswith("#"):
            raise GeometryError(f"the drawing takes a part from elsewhere ({link[:60]}): put it into the file")
        found = self.by_id.get(link[1:])
        if found is None:
            self.notes.add(f"a part '{link[1:41]}' is used that is not there")
        return found

    def _clips(self, own: Mapping[str, str], scene: Scene) -> Iterator[Window]:
        text = own.get("clip-path", "none")
        if text in ("none", "") or not scene.is_wanted:
            return
        target = self.by_id.get(text.removeprefix("url(").rstrip(")").strip("'\" ").removeprefix("#"))
        if target is None or target.tag != "clipPath":
            self.notes.add(f"the clip path '{text[:40]}' is passed over")
            return
        if target.attributes.get("clipPathUnits") == "objectBoundingBox":
            self.notes.add("a clip path in shares of its shape's box is passed over")
            return
        yield self._window(target, scene)

    def _window(self, clip: Element, scene: Scene) -> Window:
        """The area of a clip path: all its shapes filled, whatever their paint."""
        if clip.id in scene.uses or len(scene.uses) >= DEEPEST_USE:
            raise GeometryError(f"the drawing clips with '{clip.id[:40]}' inside itself")
        bare = replace(scene, style=Style().as_clip(), windows=(), uses=(*scene.uses, clip.id))
        inside = self._entered(clip, bare)
        marks = tuple(self._children(clip, inside))
        return Window(tuple(replace(mark, windows=(*inside.windows, *mark.windows)) for mark in marks))


def _share(text: str) -> float:
    """A share as a number or percentage; 1 for what is none."""
    found = length_px(text, 1.0)
    return 1.0 if found is None else found


EFFECTS = {
    "filter": "a filter is passed over: outlines cannot be blurred or shaded",
    "mask": "a mask is passed over: what it would hide is drawn",
    "marker-start": "marks at the ends of lines (marker) are left out",
    "marker-mid": "marks at the corners of lines (marker) are left out",
    "marker-end": "marks at the ends of lines (marker) are left out",
}
"""Properties that cannot be kept, and what is said of each."""

GROUP_WALKS: dict[str, Callable[[_Walk, Element, Scene], Iterator[Mark]]] = {
    "g": _Walk._children,
    "a": _Walk._children,
    "svg": _Walk._inner_svg,
    "switch": _Walk._switch,
    "use": _Walk._use,
}
"""How the inside of each kind of group is walked over."""
