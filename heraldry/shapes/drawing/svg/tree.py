"""An SVG file as a tree of elements, read so that no file can do harm.

expat reads it; nothing outside of the file is ever opened. Whatever could make a small file large, or lead out of
it, is refused where it begins: declarations of entities, document types other than the plain one of SVG, style sheets
of other files. Elements are counted and their depth is measured while they are read.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NoReturn
from xml.parsers import expat

from heraldry.errors import GeometryError

MOST_ELEMENTS = 10_000
"""A drawing of more pieces than this is a map or a photograph traced, and no herald."""

DEEPEST = 200
"""Groups within groups; drawing programs rarely go beyond twenty."""

LONGEST_TEXT = 1_000_000
"""Characters of one text, such as a style sheet."""

SVG_NAMESPACE = "http://www.w3.org/2000/svg"
_PLAIN_TYPE = "-//W3C//DTD SVG"
"""How the public names of SVG's own document types begin (SVG 1.1, section 1.3); they declare nothing that we need."""

_SEPARATOR = "|"
_KEPT_OF_OTHERS = ("href", "label", "space")
"""Attributes of other namespaces that mean something here: links, names of layers, xml:space."""


@dataclass(eq=False)
class Element:
    """One element: its name without a namespace (``?`` before it where it is not SVG's), and what it holds."""

    tag: str
    attributes: Mapping[str, str]
    parent: Element | None = None
    children: list[Element] = field(default_factory=list)
    text: str = ""

    @property
    def id(self) -> str:
        """Its name in the file, or nothing."""
        return self.attributes.get("id", "")

    @property
    def names(self) -> tuple[str, ...]:
        """What a user may call it: its id, and the label of a layer."""
        return tuple(name for name in (self.id, self.attributes.get("label", "")) if name)


def read_tree(content: bytes, file: str) -> Element:
    """The root of an SVG file; raises GeometryError for what is broken, too large or not to be trusted."""
    builder = _Builder(file)
    parser = expat.ParserCreate(namespace_separator=_SEPARATOR)
    parser.buffer_text = True
    parser.StartElementHandler = builder.start
    parser.EndElementHandler = builder.end
    parser.CharacterDataHandler = builder.characters
    parser.StartDoctypeDeclHandler = builder.document_type
    parser.EntityDeclHandler = builder.entity
    parser.ProcessingInstructionHandler = builder.instruction
    try:
        parser.Parse(content, True)
    except expat.ExpatError as error:
        raise GeometryError(
            f"{file} is no sound SVG file: {expat.ErrorString(error.code)}, line {error.lineno}"
        ) from None
    except (ValueError, LookupError) as error:  # an encoding that nobody knows
        raise GeometryError(f"{file} is no sound SVG file: {error}") from None
    return builder.finished()


@dataclass
class _Builder:
    """Puts elements together as the parser meets them."""

    file: str
    root: Element | None = None
    open: list[Element] = field(default_factory=list)
    count: int = 0
    texts: list[list[str]] = field(default_factory=list)
    text_length: int = 0

    def start(self, name: str, attributes: dict[str, str]) -> None:
        self.count += 1
        if self.count > MOST_ELEMENTS:
            self._refuse(f"it has more than {MOST_ELEMENTS:,} elements")
        if len(self.open) >= DEEPEST:
            self._refuse(f"its groups lie more than {DEEPEST} deep in each other")
        parent = self.open[-1] if self.open else None
        element = Element(_local_tag(name), _own_attributes(attributes), parent)
        if parent is None:
            self.root = element
        else:
            parent.children.append(element)
        self.open.append(element)
        self.texts.append([])

    def end(self, _: str) -> None:
        element = self.open.pop()
        element.text = "".join(self.texts.pop())

    def characters(self, text: str) -> None:
        if not self.open or self.open[-1].tag != "style":
            return
        self.text_length += len(text)
        if self.text_length > LONGEST_TEXT:
            self._refuse(f"its style sheets are longer than {LONGEST_TEXT:,} characters")
        self.texts[-1].append(text)

    def document_type(self, _: str, system: str | None, public: str | None, __: int) -> None:
        if system is not None and not (public or "").startswith(_PLAIN_TYPE):
            self._refuse(f"it leans on a document type of its own ({(public or system)[:60]})")

    def entity(self, name: str, *_: object) -> None:
        self._refuse(f"it declares an entity of its own ('{name[:40]}')")

    def instruction(self, target: str, _: str) -> None:
        if target == "xml-stylesheet":
            self._refuse("its colours are in a style sheet of another file")

    def finished(self) -> Element:
        if self.root is None or self.root.tag != "svg":
            found = "nothing" if self.root is None else f"'{self.root.tag.lstrip('?')}'"
            raise GeometryError(f"{self.file} is XML but no SVG: its root must be 'svg', found {found}")
        return self.root

    def _refuse(self, why: str) -> NoReturn:
        raise GeometryError(f"{self.file} is not read: {why}; save it as plain SVG, everything in one file")


def _local_tag(name: str) -> str:
    namespace, _, local = name.rpartition(_SEPARATOR)
    return local if namespace in ("", SVG_NAMESPACE) else f"?{local}"


def _own_attributes(attributes: Mapping[str, str]) -> dict[str, str]:
    """Attributes without a namespace, and the few others that matter; a plain ``href`` goes before a linked one."""
    own = {}
    for name, value in attributes.items():
        namespace, _, local = name.rpartition(_SEPARATOR)
        if not namespace:
            own[local] = value
        elif local in _KEPT_OF_OTHERS:
            own.setdefault(local, value)
    return own
