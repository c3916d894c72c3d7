"""A spec file as plain data, with the place of every field name and value."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Final, NamedTuple, NoReturn

import yaml

from checker.known import Path
from checker.spec.problem import Place, Problem, SpecUnreadable, quoted
from checker.spec.scalar import ScalarError, resolve
from checker.spec.source import text_of
from checker.spec.syntax import syntax_problem

MOST_NODES: Final = 50_000
MOST_ALIASES: Final = 100
DEEPEST: Final = 40
MOST_PROBLEMS: Final = 100

# libyaml where PyYAML has it: ten times as fast.
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_Collection = dict[str, Any] | list[Any]
_A_NAME = "a name that begins with a letter"
_AWAITED: Any = object()  # stands for the key of a mapping whose next node is a key


@dataclass(frozen=True, slots=True)
class Document:
    """A spec file that is sound YAML.

    Attributes:
        name: name of the file, for messages.
        data: mappings, lists, texts, numbers and truths.
        marks: where the reader found every value. What an alias repeats is found at its anchor
            only.
        key_marks: where it found every field name, by the path of its value.
        problems: what is wrong with single names and values. Such a value stands in the data as
            the text it was written as; what no name leads to is left out.
    """

    name: str
    data: Any
    marks: Mapping[Path, Any]
    key_marks: Mapping[Path, Any]
    problems: tuple[Problem, ...] = ()

    def place(self, path: Path) -> Place:
        """The place of a value, or of the nearest value around it that the file holds."""
        while path not in self.marks:
            path = path[:-1]
        return _place(self.marks[path])

    def key_place(self, path: Path) -> Place:
        """The place of the name of a field, or of its value where it has no name."""
        mark = self.key_marks.get(path)
        return _place(mark) if mark is not None else self.place(path)

    def problem(
        self,
        path: Path,
        message: str,
        found: str,
        expected: str,
        hint: str = "",
        *,
        at_key: bool = False,
    ) -> Problem:
        """A problem at a value of this document, or at the name of its field."""
        line, column = self.key_place(path) if at_key else self.place(path)
        return Problem(path, line, column, found, expected, message, hint)


def read_document(source: bytes, name: str) -> Document:
    """Read the bytes of a spec file.

    Args:
        source: bytes of the file.
        name: name of the file, for messages.

    Raises:
        SpecUnreadable: with every problem found, in the order of the file.
    """
    document = survey_document(source, name)
    if document.problems:
        raise SpecUnreadable(name, document.problems)
    return document


def survey_document(source: bytes, name: str) -> Document:
    """Read the bytes of a spec file, and go on past names and values that cannot be read.

    Args:
        source: bytes of the file.
        name: name of the file, for messages.

    Raises:
        SpecUnreadable: the file as a whole cannot be read; with every problem found until then.
    """
    text = text_of(source, name)
    composer = _Composer(name)
    try:
        for event in yaml.parse(text, Loader=_LOADER):
            composer.feed(event)
    except yaml.YAMLError as error:
        composer.problems.append(syntax_problem(error, text))
        composer.stop()
    return composer.document()


class _Anchored(NamedTuple):
    """What an alias repeats: the value, the number of nodes in it and how deep they nest."""

    value: Any
    nodes: int
    height: int


class _Level:
    """A mapping or a list that is still open.

    Attributes:
        data: what it holds so far.
        path: its place in the document.
        key: of a mapping, the key whose value comes next, or ``_AWAITED``.
        keeps: of a mapping, false where that value has no name of its own and is left out.
        anchor: its anchor, if it has one.
        before: the number of nodes before it.
        height: how deep its content nests.
        is_key: true where it stands in the place of a field name.
    """

    __slots__ = ("anchor", "before", "data", "height", "is_key", "keeps", "key", "path")

    def __init__(
        self, data: _Collection, path: Path, anchor: str | None, before: int, is_key: bool
    ) -> None:
        self.data = data
        self.path = path
        self.key: Any = _AWAITED
        self.keeps = True
        self.anchor = anchor
        self.before = before
        self.height = 0
        self.is_key = is_key


class _Composer:
    """Builds a document from the events of the parser, without recursion and within bounds."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.problems: list[Problem] = []
        self._values: dict[Path, Any] = {}
        self._keys: dict[Path, Any] = {}
        self._levels: list[_Level] = []
        self._anchors: dict[str, _Anchored | None] = {}
        self._root: Any = _AWAITED
        self._nodes = 0
        self._aliases = 0
        self._takers: dict[type, Callable[[Any], None]] = {
            yaml.ScalarEvent: self._take_scalar,
            yaml.MappingStartEvent: self._take_mapping,
            yaml.SequenceStartEvent: self._take_list,
            yaml.MappingEndEvent: self._close,
            yaml.SequenceEndEvent: self._close,
            yaml.AliasEvent: self._take_alias,
            yaml.DocumentStartEvent: self._take_document,
        }

    def feed(self, event: yaml.Event) -> None:
        """Take the next event."""
        take = self._takers.get(type(event))
        if take is not None:
            take(event)

    def _take_scalar(self, event: yaml.ScalarEvent) -> None:
        self._count(event)
        if self._key_is_next():
            self._name_field(event)
        else:
            self._scalar(event)

    def _take_mapping(self, event: yaml.MappingStartEvent) -> None:
        self._open(event, {})

    def _take_list(self, event: yaml.SequenceStartEvent) -> None:
        self._open(event, [])

    def _take_document(self, event: yaml.DocumentStartEvent) -> None:
        if self._root is not _AWAITED:
            self._fatal(event, "a second document begins", "'---'", "one document per file")

    def document(self) -> Document:
        """The finished document, with the problems found in it.

        Raises:
            SpecUnreadable: it holds nothing.
        """
        if self._root is _AWAITED:
            self.problems.append(Problem((), 1, 1, "nothing", "a spec", "the file holds no fields"))
            self.stop()
        return Document(self.name, self._root, self._values, self._keys, self._in_order())

    def stop(self) -> NoReturn:
        """Report what was found so far.

        Raises:
            SpecUnreadable: always.
        """
        raise SpecUnreadable(self.name, self._in_order())

    def _in_order(self) -> tuple[Problem, ...]:
        return tuple(sorted(self.problems, key=lambda each: (each.line, each.column)))

    def _fatal(self, event: yaml.Event, message: str, found: str, expected: str) -> NoReturn:
        self._report(event, (), message, found, expected)
        self.stop()

    def _report(
        self, event: yaml.Event, path: Path, message: str, found: str, expected: str, hint: str = ""
    ) -> None:
        place = _place(event.start_mark)
        self.problems.append(Problem(path, *place, found, expected, message, hint))
        if len(self.problems) == MOST_PROBLEMS:
            self.problems.append(
                Problem((), *place, "", "", f"reading stops after {MOST_PROBLEMS} problems")
            )
            self.stop()

    def _count(self, event: yaml.Event, nodes: int = 1) -> None:
        self._nodes += nodes
        if self._nodes > MOST_NODES:
            self._fatal(
                event,
                "the spec is too large",
                "more values",
                f"at most {MOST_NODES} names and values",
            )

    def _key_is_next(self) -> bool:
        level = self._levels[-1] if self._levels else None
        return level is not None and level.key is _AWAITED and isinstance(level.data, dict)

    def _next_path(self) -> Path:
        if not self._levels:
            return ()
        level = self._levels[-1]
        return (*level.path, len(level.data) if isinstance(level.data, list) else level.key)

    def _add(self, path: Path, value: object, mark: object, height: int = 0) -> None:
        """Put a value where it belongs."""
        self._values.setdefault(path, mark)
        if not self._levels:
            self._root = value
            return
        level = self._levels[-1]
        level.height = max(level.height, height + 1)
        if isinstance(level.data, list):
            level.data.append(value)
        else:
            if level.keeps:
                level.data[level.key] = value
            level.key = _AWAITED

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        path = self._next_path()
        value: str | int | float | bool = event.value
        if event.tag is not None:
            self._refuse_tag(event, event.tag, path)
        elif event.implicit[0]:
            try:
                value = resolve(event.value)
            except ScalarError as error:
                found = quoted(event.value) if event.value else "nothing"
                self._report(event, path, error.message, found, error.expected)
        if event.anchor is not None:
            self._anchors[event.anchor] = _Anchored(value, 1, 0)
        self._add(path, value, event.start_mark)

    def _name_field(self, event: yaml.ScalarEvent) -> None:
        """Take the name of a field; whatever is wrong with it, its value is read under it."""
        level = self._levels[-1]
        name = event.value
        path = (*level.path, name)
        first = self._keys.setdefault(path, event.start_mark)
        level.keeps = name not in level.data
        if event.tag is not None:
            self._refuse_tag(event, event.tag, path)
        elif fault := _fault_of_name(name, event.implicit[0]):
            found = quoted(name) if name else "nothing"
            self._report(event, path, fault.message, found, fault.expected)
        elif not level.keeps:
            at = "line {}, column {}".format(*_place(first))
            self._report(
                event,
                path,
                "the field is given twice",
                f"{quoted(name)} again",
                f"only the one at {at}",
            )
        if event.anchor is not None:
            self._anchors[event.anchor] = _Anchored(name, 1, 0)
        level.key = name

    def _open(self, event: yaml.CollectionStartEvent, data: _Collection) -> None:
        before = self._nodes
        self._count(event)
        if len(self._levels) == DEEPEST:
            self._fatal(event, "the spec nests too deep", "one more", f"at most {DEEPEST} levels")
        is_key = self._key_is_next()
        if is_key:
            self._refuse_key(event, "a list or a mapping")
        path = self._next_path()
        if event.tag is not None:
            self._refuse_tag(event, event.tag, path)
        if event.anchor is not None:
            self._anchors[event.anchor] = None
        self._values.setdefault(path, event.start_mark)
        self._levels.append(_Level(data, path, event.anchor, before, is_key))

    def _close(self, _: yaml.CollectionEndEvent) -> None:
        level = self._levels.pop()
        if level.anchor is not None:
            nodes = self._nodes - level.before
            self._anchors[level.anchor] = _Anchored(level.data, nodes, level.height)
        if not level.is_key:
            self._add(level.path, level.data, self._values[level.path], level.height)

    def _take_alias(self, event: yaml.AliasEvent) -> None:
        self._count(event)
        anchor = event.anchor or ""
        name = f"*{anchor}"
        self._aliases += 1
        if self._aliases > MOST_ALIASES:
            self._fatal(event, "too many aliases", quoted(name), f"at most {MOST_ALIASES}")
        if self._key_is_next():
            self._refuse_key(event, quoted(name))
            return
        path = self._next_path()
        anchored = self._anchors.get(anchor)
        if anchored is None:
            inside = anchor in self._anchors
            message = "the alias repeats what it stands in" if inside else "the alias has no anchor"
            expected = "the value itself" if inside else f"an anchor &{anchor} before it"
            self._report(event, path, message, quoted(name), expected)
            anchored = _Anchored(None, 1, 0)
        self._count(event, anchored.nodes)
        if len(self._levels) + anchored.height > DEEPEST:
            self._fatal(event, "the spec nests too deep", quoted(name), f"at most {DEEPEST} levels")
        self._add(path, anchored.value, event.start_mark, anchored.height)

    def _refuse_key(self, event: yaml.Event, found: str) -> None:
        level = self._levels[-1]
        level.key = "?"
        level.keeps = False
        self._report(event, level.path, "a field name is not a text", found, _A_NAME)

    def _refuse_tag(self, event: yaml.Event, tag: str, path: Path) -> None:
        self._report(event, path, "a tag is not allowed", quoted(tag), "the value alone")


def _place(mark: Any) -> Place:
    return Place(mark.line + 1, mark.column + 1)


class _Fault(NamedTuple):
    """What is wrong with the name of a field, and what could be written instead."""

    message: str
    expected: str


@lru_cache(maxsize=8192)
def _fault_of_name(name: str, plain: bool) -> _Fault | None:
    """What keeps a scalar from being the name of a field, if anything does."""
    if not name:
        return _Fault("a field has no name", _A_NAME)
    if not plain:
        return None
    if name == "<<":
        return _Fault("merging is not supported", "the fields themselves, written out")
    try:
        is_text = isinstance(resolve(name), str)
    except ScalarError as error:
        return _Fault(error.message, f"{_A_NAME}; in quotes, if it must be this one")
    return None if is_text else _Fault("a field name is not a text", _A_NAME)
